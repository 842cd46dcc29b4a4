package pdf

import (
	"bytes"
	"strings"
)

// A reader aloud needs the language of a document, and a window its title
// (ISO 32000-1, 14.9.2 and 12.2). gofpdf writes neither into the catalogue, but two
// entries that ours does without; they are taken for these, at equal length, so that
// the offsets of the file stay true. It writes no structure tree either, so the pages
// carry no tags.
const (
	placeholderZoom, placeholderLayout = "real", "TwoColumnRight"

	placeholder = "/OpenAction [3 0 R /XYZ null null 1]\n/PageLayout /TwoColumnRight"
	language    = "/Lang (en-GB) /ViewerPreferences << /DisplayDocTitle true >>"
)

// sayLanguage puts the entries in, in the last place that has the placeholder.
func sayLanguage(file []byte) {
	at := bytes.LastIndex(file, []byte(placeholder))
	if at >= 0 {
		copy(file[at:], language+strings.Repeat(" ", len(placeholder)-len(language)))
	}
}
