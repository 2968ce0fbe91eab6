package reckon

import "example.com/tintline/core/calib"

// ground answers areas and courses.
func (c *caught) ground(out answers) {
	if c.course.given && c.width.given || c.plot.given {
		out.area("area_", c.area())
		out.area("", c.area())
	}
	if !c.width.given {
		return
	}
	acre, _ := factor("area", "acre")
	for _, u := range lengthUnits {
		f, _ := factor("length", u)
		all := calib.CourseFor(acre, c.width.base) / f
		out[u+"_per_acre"], out[u+"_per_tenth_acre"] = all, all/10
	}
	if c.course.given {
		return
	}
	// The course is that of the plot as it is given. Distance and length of a plot are those of 1/128 acre where what is
	// given is its usual rounding: the publications print 340 sq ft and mean 340.3125.
	plot := c.area()
	out.plain("course_", "length", lengthUnits, calib.CourseFor(plot, c.width.base))
	for _, u := range lengthUnits {
		f, _ := factor("length", u)
		out["course_"+u+"_true_128th"] = calib.CourseFor(calib.OuncePlot(), c.width.base) / f
	}
	if c.rounded {
		plot = calib.OuncePlot()
	}
	out.plain("distance_", "length", lengthUnits, calib.CourseFor(plot, c.width.base))
	out.plain("plot_length_", "length", lengthUnits, calib.CourseFor(plot, c.width.base))
}

// pace answers times and speeds.
func (c *caught) pace(out answers) {
	if len(c.seconds) == 0 {
		return
	}
	mean := calib.Mean(c.seconds)
	out["mean_seconds"] = mean
	out["spread_pct"] = 100 * calib.SpreadOf(c.seconds)
	if c.course.given {
		out.plain("speed_", "speed", speedUnits, calib.SpeedOf(c.course.base, mean))
	}
	if len(c.collected) > 0 {
		out.plain("", "flow", flowUnits, calib.Mean(c.collected)/mean)
	}
}

// wet answers what liquid goes down, by a catch, by what was used, or by flow and speed.
func (c *caught) wet(out answers) {
	var laid float64
	mean := calib.Mean(c.seconds)
	switch {
	case len(c.collected) > 0:
		laid = calib.LaidOn(calib.Mean(c.collected), mean, c.area(), mean)
		if len(c.collected) > 1 {
			out["catch_spread_pct"] = 100 * calib.SpreadOf(c.collected)
			out["variation_pct"] = 100 * calib.Variation(c.collected)
		}
		out.plain("mean_catch_", "volume", volumeUnits, calib.Mean(c.collected))
	case c.used.given:
		laid = calib.LaidOn(c.used.base, mean, c.area(), mean)
	case c.flow.given && c.speed.given && c.width.given:
		laid = calib.LaidBy(c.flow.base, c.speed.base, c.width.base)
	case c.flow.given && len(c.seconds) > 0:
		laid = calib.LaidOn(c.flow.base, 1, c.area(), mean)
	default:
		return
	}
	out.per("", "volume", volumeUnits, "area", areaUnits, laid)
	if c.tank.given {
		for _, u := range areaUnits {
			f, _ := factor("area", u)
			out[u+"_per_tank"] = c.tank.base / laid / f
		}
		out["acres_per_tank"] = out["acre_per_tank"]
	}
}

// weighed answers what dry product goes down.
func (c *caught) weighed(out answers) {
	rate := c.dry
	switch {
	case c.dropped.given && (c.plot.given || c.course.given && c.width.given):
		rate = quantity{given: true, base: calib.LaidOn(c.dropped.base, 0, c.area(), 0)}
	case c.nitrogen.given:
		rate = quantity{given: true, base: c.nitrogen.base / c.percentN.base}
		if c.plot.given || c.course.given && c.width.given {
			out.plain("", "mass", massUnits, rate.base*c.area())
		}
	}
	if !rate.given {
		return
	}
	out.per("", "mass", massUnits, "area", areaUnits, rate.base)
	if c.percentAI.given {
		for _, top := range massUnits {
			for _, bottom := range areaUnits {
				f, _ := factor("mass", top)
				g, _ := factor("area", bottom)
				out[top+"_ai_per_"+bottom] = rate.base * c.percentAI.base / f * g
			}
		}
	}
}
