package program

// CoachNote is a page of the coach's that belongs to a day: news, an answer to a
// question that many ask. Notes go on the site and into its feed.
type CoachNote struct {
	ID    string // the file's name
	Title string
	On    Date
	Body  string // Markdown
	File  string
	Line  int // of the body's first line
}
