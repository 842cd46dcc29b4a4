package fusing

// Prepared is the device with its band worked out, for asking it often: the
// answers are the same. A device without type or rating stays as it is.
func (d Device) Prepared() Device {
	if !complete(d) {
		return d
	}
	c := d.curve()
	c.unpublished, c.carriedOn = c.noteUnpublished(), c.noteCarriedOn()
	d.ready = c
	return d
}

// curve is the band of the device, worked out now unless it has been.
func (d Device) curve() *curve {
	if c := d.ready; c != nil && c.device.Type == d.Type && c.device.Rating == d.Rating &&
		c.device.AmbientC == d.AmbientC {
		return c
	}
	return d.workOut()
}
