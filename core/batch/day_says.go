package batch

func (d *Day) saySaves(c *DayChoice) []Step { return nil }
