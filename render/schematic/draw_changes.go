package schematic

import (
	"fmt"
	"fusewright/harness"
	"fusewright/render/scene"
	"fusewright/render/schematic/paint"
)

// DrawChanges makes the sheets of a design with what changed against an earlier
// one marked (Options.Changes). Where something is gone or was connected
// differently, those sheets of the earlier design follow that carry a mark.
func DrawChanges(earlier, now *harness.Review, opt Options) ([]*scene.Sheet, error) {
	if opt.Changes == nil || earlier == nil || earlier.Circuit == nil {
		return nil, fmt.Errorf("schematic: no earlier design to compare with")
	}
	if now == nil || now.Circuit == nil {
		return nil, fmt.Errorf("schematic: no circuit to draw")
	}
	d, was, err := planChanges(earlier, now, opt)
	if err != nil {
		return nil, err
	}
	sheets := d.Paint()
	if was != nil {
		sheets = append(sheets, was.Paint()...)
	}
	return sheets, nil
}

// planChanges lays out the sheets of both designs; was is nil when words tell
// everything.
func planChanges(earlier, now *harness.Review, opt Options) (d, was *paint.Drawing, err error) {
	d, err = plan(now, opt)
	if err != nil || !opt.Changes.Rewired() {
		return d, nil, err
	}
	opt.asWas = true
	if was, err = plan(earlier, opt); err != nil {
		return nil, nil, err
	}
	d.Follow(was)
	return d, was, nil
}
