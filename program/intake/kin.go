package intake

import (
	"fmt"

	"gatepost/program"
)

// kin is another skill whose strength goes with a road map's. The most is our judgement:
// no two skills are one.
func kin(k *program.Kin) read {
	return group(
		must("skill", "another-skill", text(&k.Skill)),
		must("correlation", "0.5", number(&k.Correlation, 0, 0.9)),
	)
}

// linkKin finds the skills that a road map names as kin. One that a coach took away drops
// out of what is built in; what two road maps say of each other must agree.
func (s *shelf) linkKin(m *program.RoadMap) {
	src, all := s.roadMapFiles[m.ID], m.Kin
	m.Kin = nil
	for i, k := range all {
		id, message, advice := s.roadMapNames.resolve(k.Skill)
		at := src.at("kin[%d].skill", i)
		switch {
		case k.Skill == "" || message != "" && (src.builtIn || s.broken[fold(k.Skill)]):
		case message != "":
			src.say(at, message, advice)
		case id == m.ID:
			src.say(at, "a skill is no kin of its own", "Name another road map, or take the line away.")
		default:
			if said := s.Kinship(m.ID, id); said != 0 && said != k.Correlation {
				src.say(at, fmt.Sprintf("%s is said to go with %s by %s elsewhere", quote(m.ID), quote(id), short(said)), "Say it once, or write the same number.")
				continue
			}
			m.Kin = append(m.Kin, program.Kin{Skill: id, Correlation: k.Correlation})
		}
	}
}

// otherTest is a step of another road map than the goal's.
func otherTest(o *program.OtherTest, like samples) read {
	return func(v value) {
		amount := v.amountFields(must("hold", "10 s", longHold.into(&o.Seconds)), may("reps", "5", whole(&o.Reps, 0, 200)))
		group(append([]field{
			must("skill", like.Skill, text(&o.Skill)),
			must("step", like.Step, text(&o.Step)),
			may("stopped", "yes", yesNo(&o.Stopped)),
		}, amount...)...)(v)
	}
}

// checkOthers finds the road map and the step of each test of another skill.
func (c *client) checkOthers() {
	for i := range c.Others {
		o, path := &c.Others[i], fmt.Sprintf("other_tests[%d]", i)
		if o.Skill == "" || c.library.broken[fold(o.Skill)] {
			continue
		}
		o.Skill = c.resolve(c.library.roadMapNames, path+".skill", o.Skill)
		m, ok := c.library.RoadMap(o.Skill)
		if !ok {
			continue
		}
		if o.Step != "" {
			o.Step = c.resolve(c.library.stepNames[m.ID], path+".step", o.Step)
		}
		c.countedAs(m, path)
		c.checkStopped(path, o.Stopped, o.Seconds, o.Reps)
		switch {
		case c.roadMap == nil:
		case m == c.roadMap:
			c.wrong(path+".skill", "other_same")
		case c.library.Kinship(c.roadMap.ID, m.ID) == 0:
			c.unusual(path+".skill", "other_no_kin", "other", quote(m.Name), "skill", quote(c.roadMap.Name))
		}
	}
}
