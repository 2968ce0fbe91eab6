package core

import "time"

// The bounds of a place on a map, in degrees.
const (
	MostLatitude  = 90
	MostLongitude = 180
)

// The bounds of a lawn's round, in days.
const (
	FewestRoundDays = 7
	MostRoundDays   = 366
)

// admitWhereAndWhen admits where a lawn is, when a visit there may begin and how often.
func admitWhereAndWhen(f *Lawn) error {
	lat, long := f.Latitude, f.Longitude
	switch {
	case lat.Known != long.Known:
		return refuse("Give latitude and longitude, or neither.", "Only one of latitude and longitude of %s is given.", f.LawnName)
	case lat.Known && !(lat.V >= -MostLatitude && lat.V <= MostLatitude):
		return refuse("Give -90 to 90 degrees, north above 0.", "The latitude of %s is %.6g.", f.LawnName, lat.V)
	case long.Known && !(long.V >= -MostLongitude && long.V <= MostLongitude):
		return refuse("Give -180 to 180 degrees, west below 0.", "The longitude of %s is %.6g.", f.LawnName, long.V)
	case f.RoundDays.Known && !(f.RoundDays.V >= FewestRoundDays && f.RoundDays.V <= MostRoundDays):
		return refuse("Give 7 to 366 days.", "The round of %s is %.6g days.", f.LawnName, f.RoundDays.V)
	}
	for _, at := range []string{f.WindowFrom, f.WindowTo} {
		if _, err := MinuteOfDay(at); at != "" && err != nil {
			return err
		}
	}
	if f.WindowFrom != "" && f.WindowTo != "" && f.WindowFrom > f.WindowTo {
		return refuse("Give a later time as the end, or leave one out.", "A visit at %s could begin from %s to %s.", f.LawnName, f.WindowFrom, f.WindowTo)
	}
	return nil
}

// MinuteOfDay reads a time of day as "09:35", in minutes since midnight.
func MinuteOfDay(s string) (int, error) {
	t, err := time.Parse(clockForm, s)
	if err != nil || len(s) != len(clockForm) {
		return 0, refuse("Write it as in 09:35.", "%q is no time of day.", s)
	}
	return 60*t.Hour() + t.Minute(), nil
}
