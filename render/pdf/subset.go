package pdf

import (
	"bytes"

	"fusewright/render/scene"
)

// A subset of a font must carry a tag of six capitals before its name
// (ISO 32000-1, 9.6.4), or a viewer that merges files may take one subset for
// another. gofpdf embeds subsets but writes "utf8" and the family in small
// letters. So each face gets a family whose written name is exactly as long as
// the right one, and the finished file has the one put in for the other: equal
// lengths keep the file's offsets true.
var subsets = map[scene.Face]struct{ family, tagged string }{
	scene.Regular: {"fusewrightfaceregular0000", "FWAAAA+LiberationSans-Regular"},
	scene.Bold:    {"fusewrightfacebold0000", "FWAAAB+LiberationSans-Bold"},
	scene.Italic:  {"fusewrightfaceitalic0000", "FWAAAC+LiberationSans-Italic"},
}

// writtenPrefix is what gofpdf puts before the family.
const writtenPrefix = "/utf8"

// familyOf names a face towards gofpdf; an unknown face is the regular one.
func familyOf(face scene.Face) string {
	subset, known := subsets[face]
	if !known {
		subset = subsets[scene.Regular]
	}
	return subset.family
}

// tagSubsets puts the tagged names in, each in the place of one as long.
func tagSubsets(file []byte) {
	for _, face := range scene.Faces {
		subset := subsets[face]
		written, tagged := []byte(writtenPrefix+subset.family), "/"+subset.tagged
		for rest := file; ; {
			at := bytes.Index(rest, written)
			if at < 0 {
				break
			}
			copy(rest[at:], tagged)
			rest = rest[at+len(tagged):]
		}
	}
}
