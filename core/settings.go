package core

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// SettingRow is one line of the table of settings.
type SettingRow struct {
	Name, Unit string
	Low, High  float64
	Default    float64
	Options    []string // what can be chosen, the default first; empty: it is a number or a text
	Text       bool     // any line up to LongestSetting letters; the default is none
	Words      string
	Source     string
}

// DefaultText is the default as it would be typed.
func (r SettingRow) DefaultText() string {
	if r.Text {
		return ""
	}
	if len(r.Options) > 0 {
		return r.Options[0]
	}
	return strconv.FormatFloat(r.Default, 'g', -1, 64)
}

// Allowed says what may be set.
func (r SettingRow) Allowed() string {
	if r.Text {
		return fmt.Sprintf("a line of up to %d letters", LongestSetting)
	}
	if n := len(r.Options); n > 0 {
		return strings.Join(r.Options[:n-1], ", ") + " or " + r.Options[n-1]
	}
	return fmt.Sprintf("%g to %g (%s)", r.Low, r.High, r.Unit)
}

//go:embed settings.csv
var settingsCSV string

var settingRows = readSettings(settingsCSV)

func readSettings(text string) []SettingRow {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/settings.csv: " + err.Error()) // embedded: a broken table is a broken build, held by a test
	}
	var out []SettingRow
	for _, r := range rows[1:] {
		row := SettingRow{Name: r[0], Words: r[6], Source: r[7]}
		switch r[1] {
		case "choice":
			row.Options = strings.Split(r[2], "|")
		case "text":
			row.Text = true
		default:
			row.Unit, row.Low, row.High, row.Default = r[2], mustFloat(r[3]), mustFloat(r[4]), mustFloat(r[5])
		}
		out = append(out, row)
	}
	return out
}

func mustFloat(s string) float64 {
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic("core/settings.csv: " + err.Error()) // as above
	}
	return f
}

// Settings lists what can be set.
func Settings() []SettingRow { return append([]SettingRow(nil), settingRows...) }

func settingRow(name string) (SettingRow, bool) {
	for _, r := range settingRows {
		if r.Name == name {
			return r, true
		}
	}
	return SettingRow{}, false
}

// The names of the settings that this package and its rooms read.
const (
	WeatherAskMin    = "weather_ask_min"
	WeatherOldMin    = "weather_old_min"
	WindNoteBelowMPH = "wind_note_below_mph"
	WindAskMPH       = "wind_ask_mph"
	WindStopMPH      = "wind_stop_mph"
	RainFreeMinH     = "rain_free_min_h"
	Theme            = "theme"
	GaugeErrorPct    = "gauge_error_pct"
	RateErrorPct     = "rate_error_pct"
	BypassFlowGPM    = "bypass_flow_gpm"
	StrengthBandPct  = "strength_band_pct"
	CleanNotAllowed  = "clean_not_allowed"
	CleanAllowed     = "clean_allowed"
	ResidueShare     = "residue_share"
	TraceNoteShare   = "trace_note_share"
	HeatStepF        = "heat_step_f"
	GrowthAskFrom    = "growth_ask_from"
	GrowthAskTo      = "growth_ask_to"
	StartDelayS      = "start_delay_s"
	DoubtGaugeBands  = "doubt_gauge_bands"
	DoubtGaugePct    = "doubt_gauge_pct"
	DoubtPushPct     = "doubt_push_pct"
	DoubtMuch        = "doubt_much"
	DoubtLittle      = "doubt_little"
	DoubtWindMPH     = "doubt_wind_mph"
	DoubtTempF       = "doubt_temp_f"
	DoubtWeatherMin  = "doubt_weather_min"
	ClockBackMin     = "clock_back_min"
	GaugeReadShare   = "gauge_read_share"
	GaugeSlopePct    = "gauge_slope_pct"
	HoseErrorPct     = "hose_error_pct"
	CellErrorPct     = "cell_error_pct"
	FlowErrorPct     = "flow_error_pct"
	TintTimeErrorS   = "tint_time_error_s"
	TintFirstPct     = "tint_first_pct"
	TintOddSDs       = "tint_odd_sds"
	CatchSpreadPct   = "catch_spread_pct"
	RateOffPct       = "rate_off_pct"
	NozzleWornPct    = "nozzle_worn_pct"
	NozzleOffPct     = "nozzle_off_pct"
	TipPressureTimes = "tip_pressure_times"
	CalibrateDays    = "calibrate_days"
	DoubtRatePct     = "doubt_rate_pct"

	ApplicationFromPct = "application_from_pct"
	SeasonNotePct      = "season_note_pct"
	NitrogenRegion     = "nitrogen_region"
	RoundDays          = "round_days"

	SettleMin = "settle_min"
	StirMin   = "stir_min"
	StandingH = "standing_h"

	TankDepthIn   = "tank_depth_in"
	CrossBoreIn   = "cross_bore_in"
	CrossLengthFt = "cross_length_ft"
	CrossLossK    = "cross_loss"

	WaterFirstPct = "water_first_pct"
	MeterOffPct   = "meter_off_pct"

	// MixingOrder is the order of adding, where the operator set one of his own.
	MixingOrder = "mixing_order"

	// What gauges teach of the applicators.
	FactorErrorPct   = "factor_error_pct"
	FactorTestedPct  = "factor_tested_pct"
	FactorTestedDays = "factor_tested_days"
	JobErrorPct      = "job_error_pct"
	FactorDriftPct   = "factor_drift_pct"
	FactorOddSDs     = "factor_odd_sds"
	FactorReadings   = "factor_readings"

	CopiesKeptDays = "copies_kept_days"

	// What is charged where neither lawn nor zone says it, and what the day is to bring; 0: nothing is said.
	PriceVisitUSD     = "price_visit_usd"
	PriceMinimumUSD   = "price_minimum_usd"
	PriceIncludedSqFt = "price_included_sqft"
	PricePer1000USD   = "price_per_1000_usd"
	TargetDayUSD      = "target_day_usd"
	TargetHourUSD     = "target_hour_usd"
	DriveGapMin       = "drive_gap_min"

	// BookMeasured is whether a planned load is booked with what was measured out; the others are what it is measured with.
	BookMeasured    = "book_measured"
	MeasureUnits    = "measure_units"
	CupMarkFlOz     = "cup_mark_fl_oz"
	CupMarkML       = "cup_mark_ml"
	ScaleMarkOz     = "scale_mark_oz"
	ScaleMarkG      = "scale_mark_g"
	MeasureErrorPct = "measure_error_pct"
)

// SettingText is what the operator set, as it was written; false where the default is in force.
func (s *state) SettingText(name string) (string, bool) {
	set, ok := s.settings[name]
	return set, ok
}

// DefaultSetting as a value takes back what the operator set.
const DefaultSetting = "default"

func (s *state) applySetting(f *Setting) {
	if f.Value == DefaultSetting {
		delete(s.settings, f.SettingName)
		return
	}
	s.settings[f.SettingName] = f.Value
}

// Setting is the value in force: what the operator set, else the default of the table.
func (s *state) Setting(name string) float64 {
	return SettingValue(name, s.settings[name])
}

// SettingValue is the number that a setting of one value comes to: the default of the table where that is no number.
func SettingValue(name, value string) float64 {
	if value != "" { // that would be an error, which is made anew each time
		if f, err := strconv.ParseFloat(value, 64); err == nil {
			return f
		}
	}
	row, _ := settingRow(name)
	return row.Default
}

// SettingSource says where the value in force comes from.
func (s *state) SettingSource(name string) string {
	if _, ok := s.settings[name]; ok {
		return "set by the operator"
	}
	row, _ := settingRow(name)
	return row.Source
}

func admitSetting(f *Setting) error {
	row, ok := settingRow(f.SettingName)
	if !ok {
		var names []string
		for _, r := range settingRows {
			names = append(names, r.Name)
		}
		do := "Use a name as it stands in the list of settings."
		if near := label.Nearest(f.SettingName, names); near != "" {
			do = "Use a name as it stands in the list of settings; the nearest is " + near + "."
		}
		return refuse(do, "%q is not a setting.", f.SettingName)
	}
	if f.Value == DefaultSetting {
		return nil
	}
	if row.Text {
		return admitSettingText(f)
	}
	if len(row.Options) > 0 {
		for _, o := range row.Options {
			if f.Value == o {
				return nil
			}
		}
		return refuse("Use "+row.Allowed()+".", "%s is %q.", f.SettingName, f.Value)
	}
	v, err := measure.ParseNumber(f.Value)
	if err != nil || v < row.Low || v > row.High {
		return refuse(fmt.Sprintf("Give a number from %s.", row.Allowed()), "%s is %q; %g to %g is possible.", f.SettingName, f.Value, row.Low, row.High)
	}
	return nil
}
