package paper

import "gatepost/program/publish/view"

// layLetter is the page of a program that may not be made yet: the reasons, what
// comes next, the cautions.
func layLetter(ts *typesetter, v *view.View, sheet Sheet) *Page {
	const margin, wide = 28, 11
	page := sheet.portrait(v.Labels.Withheld, leastPage)
	width := page.Width - 2*margin
	page.add(
		ts.fit(Box{margin, 30, width, 6}, style{Face: Bold, Size: wide, Least: leastPage, Tone: Accent}, v.Skill+" · "+v.Coach.Studio),
		ts.fit(Box{margin, 37, width, 24}, style{Face: Bold, Size: 30, Least: 12, Leading: 1.1, Bottom: true}, v.Client),
		Fill{Box{margin, 64, width, 0.7}, Ink},
	)
	for _, try := range tries(12) {
		marks, end := ts.column(margin, 70, width, try.size, try.most, letterText(v))
		if end <= page.Height-30 {
			page.add(marks...)
			break
		}
	}
	foot(page, ts, v, 1, 1)
	return page
}

// letterText are the reasons, what comes next, and the cautions.
func letterText(v *view.View) []passage {
	body := []passage{{v.Labels.Withheld, title}, {v.Labels.Lead, prose}}
	for _, reason := range v.Withheld {
		body = append(body, passage{reason, bullet})
	}
	body = append(body, passage{v.Labels.Next, prose}, passage{v.Coach.Name, strong})
	body = append(body, bullets(v.Advice.CautionTitle, v.Advice.Cautions)...)
	return append(body, passage{v.Advice.NotMedical, prose})
}
