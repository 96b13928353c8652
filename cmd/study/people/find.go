package people

import "gatepost/program"

// find tries the marks of a find until one is as hard as it says, and writes down the last
// good one; whose first mark is too hard writes that.
func (t *training) find(item *program.Prescription, date program.Date) []program.Entry {
	var found []program.Entry
	for _, m := range item.Find.Marks {
		now := doing{Prescription: item.Moved(m.At), asked: float64(max(item.Hold, perRep*item.Reps))}
		if now.load = t.LeanLoad(now.Ahead); item.Step != "" {
			now.load = t.Load(item.Step, now.Rig, now.Scale)
		}
		done, limit := t.set(&now)
		hard := done.RPE > float64(item.Find.RPE) || limit < now.asked
		if hard && found != nil {
			break
		}
		e := now.entry(date)
		e.Ahead, e.Scale, e.Sets = now.Ahead, now.Scale, []program.SetDone{done}
		if e.Step != "" {
			e.Rig, e.RigGiven, e.DropGiven = now.Rig, true, true
		}
		if found = []program.Entry{e}; hard {
			break
		}
	}
	t.asPrinted = false // the mark has to be said
	return found
}
