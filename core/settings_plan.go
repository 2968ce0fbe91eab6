package core

import (
	"math"
	"strconv"
	"strings"
)

// The names of the settings of the plan of a day.
const (
	PlanChangeoverMin = "plan_changeover_min"
	PlanRefillMin     = "plan_refill_min"
	PlanRinseMin      = "plan_rinse_min"
	PlanRideOnMin     = "plan_ride_on_min"
	PlanGunSqftMin    = "plan_gun_sqft_min"
	PlanRideOnSqftMin = "plan_ride_on_sqft_min"
	PlanDriveMin      = "plan_drive_min"
	PlanToRefillMin   = "plan_to_refill_min"
	PlanDriveMPH      = "plan_drive_mph"
	PlanReservePct    = "plan_reserve_pct"
	PlanStarts        = "plan_starts"
	RefillPlace       = "refill_place"
)

// ReadRefillPlace reads "yard; 33.7701, -84.3902": a name, and where it is in degrees.
func ReadRefillPlace(text string) (name string, latitude, longitude Maybe[float64], err error) {
	name, at, has := strings.Cut(text, ";")
	name = strings.TrimSpace(name)
	if !has {
		return name, latitude, longitude, nil
	}
	lat, long, two := strings.Cut(at, ",")
	degrees := func(s string, most float64) (Maybe[float64], bool) {
		f, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
		return Known(f), err == nil && math.Abs(f) <= most
	}
	latitude, ok1 := degrees(lat, MostLatitude)
	longitude, ok2 := degrees(long, MostLongitude)
	if !two || !ok1 || !ok2 {
		return name, Maybe[float64]{}, Maybe[float64]{}, refuse("Write the name, a semicolon, latitude and longitude, as in yard; 33.7701, -84.3902.", "%q is no place in degrees.", strings.TrimSpace(at))
	}
	return name, latitude, longitude, nil
}
