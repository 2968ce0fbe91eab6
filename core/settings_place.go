package core

import (
	"strings"
	"unicode/utf8"

	"example.com/tintline/core/label"
)

// The names of the settings of the weather, of sites and of the operator's place.
const (
	TempAskF        = "temp_ask_f"
	TempStrongF     = "temp_strong_f"
	ForecastOldH    = "forecast_old_h"
	DeltaTLowC      = "delta_t_low_c"
	DeltaTCarefulC  = "delta_t_careful_c"
	DeltaTHighC     = "delta_t_high_c"
	WaterStripFt    = "water_strip_ft"
	EdibleReachFt   = "edible_reach_ft"
	RestrictedDates = "restricted_dates"
	PhosphorusRule  = "phosphorus_rule"
	PhosphorusNote  = "phosphorus_note"
)

// The names of the settings of notices and signs, and what the first two may be.
const (
	CustomerNotice = "customer_notice"
	PostSigns      = "post_signs"
	SignHours      = "sign_hours"
	SignsPerLawn   = "signs_per_lawn"
	NoticeState    = "notice_state"

	AsState = "as_state"
	ByState = "by_state"
	Never   = "never"
)

// What the setting PhosphorusRule may be.
const (
	PhosphorusNone     = "none"
	PhosphorusSoilTest = "soil_test"
	PhosphorusNever    = "never"
)

// LongestSetting bounds a setting that is a text, in letters.
const LongestSetting = 200

func admitSettingText(f *Setting) error {
	if strings.TrimSpace(f.Value) == "" {
		return refuse("Type the line, or "+DefaultSetting+" to take it back.", "%s is empty.", f.SettingName)
	}
	if n := utf8.RuneCountInString(f.Value); n > LongestSetting {
		return refuse("Write it shorter.", "%s has %d letters; up to %d are possible.", f.SettingName, n, LongestSetting)
	}
	if f.SettingName == RestrictedDates {
		_, err := ParseRestricted(f.Value)
		return err
	}
	if f.SettingName == PlanStarts {
		_, err := MinuteOfDay(f.Value)
		return err
	}
	if f.SettingName == RefillPlace {
		_, _, _, err := ReadRefillPlace(f.Value)
		return err
	}
	if f.SettingName == MixingOrder {
		_, err := label.ReadMixingOrder(f.Value)
		return troubled(err)
	}
	return nil
}

// MixingOrder is the order of adding in force: the operator's own, else the usual one.
func (s *state) MixingOrder() label.MixingOrder {
	own, err := label.ReadMixingOrder(s.settings[MixingOrder])
	if err != nil {
		return nil
	}
	return own
}
