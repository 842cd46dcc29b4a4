package scenetest

import (
	"image"
	"image/color"
)

// near is how far two grey levels of 255 may lie apart and still count as the
// same: about half the step from paper to ink. Rasterisers weigh the cover of
// an edge pixel differently, and thin lines are all edge.
const near = 110

// Compare returns the share of pixels of one picture that have no like pixel
// within one pixel in the other, whichever way round is worse, counted against
// the pixels that are inked in either. A blank picture against a drawn one
// gives 1, two blank ones 0.
func Compare(a, b image.Image) float64 {
	grayA, grayB := gray(a), gray(b)
	bounds := grayA.Rect.Intersect(grayB.Rect)
	inked, lost := 0, 0
	for y := bounds.Min.Y; y < bounds.Max.Y; y++ {
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			inkA, inkB := grayA.GrayAt(x, y).Y < 200, grayB.GrayAt(x, y).Y < 200
			if !inkA && !inkB {
				continue
			}
			inked++
			if inkA && !hasNear(grayB, x, y, grayA.GrayAt(x, y).Y) ||
				inkB && !hasNear(grayA, x, y, grayB.GrayAt(x, y).Y) {
				lost++
			}
		}
	}
	if inked == 0 {
		return 0
	}
	return float64(lost) / float64(inked)
}

func hasNear(in *image.Gray, x, y int, level uint8) bool {
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			at := image.Pt(x+dx, y+dy)
			if !at.In(in.Rect) {
				continue
			}
			difference := int(in.GrayAt(at.X, at.Y).Y) - int(level)
			if difference < near && difference > -near {
				return true
			}
		}
	}
	return false
}

// gray turns a picture grey, transparent parts white.
func gray(from image.Image) *image.Gray {
	bounds := from.Bounds()
	to := image.NewGray(image.Rect(0, 0, bounds.Dx(), bounds.Dy()))
	pixels := from.(image.RGBA64Image) // as every picture of the standard library; nothing is allocated for a pixel
	for y := range bounds.Dy() {
		for x := range bounds.Dx() {
			c := pixels.RGBA64At(bounds.Min.X+x, bounds.Min.Y+y)
			// Colours come weighed by their cover: what is left to full cover is white paper.
			paper := 0xffff - c.A
			to.SetGray(x, y, color.Gray{Y: luma(c.R+paper, c.G+paper, c.B+paper)})
		}
	}
	return to
}

// luma is the brightness of a colour, weighed as color.GrayModel does.
func luma(r, g, b uint16) uint8 {
	return uint8((19595*uint32(r) + 38470*uint32(g) + 7471*uint32(b) + 1<<15) >> 24)
}
