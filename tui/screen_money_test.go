package tui

import "testing"

func TestMoneyByKeys(t *testing.T) {
	c := twoLawns(t).size(100, 60).press("g", "n", "i").sees("Money", "by day").press("right").sees("by week")
	c.press("i").typed("fuel").press("enter").sees("It is not said for what, or how much.").press("esc")
	c.press("i").typed("fuel 62.40 diesel").press("enter").sees("62.40")
	c.press("l").typed("2025 2024").press("enter").sees("runs backwards").press("esc").press("l").typed("may").press("enter").sees("2026-05-01 to 2026-05-31")
}
