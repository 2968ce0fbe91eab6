package past

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/tally"
)

// moneyAgrees: whichever way money is added up, it comes to the same to the cent, the second and the visit; and what was paid for is
// what was laid.
func (k *season) moneyAgrees(t *rapid.T, from, to string, now core.Maybe[core.Moment]) {
	days, err := Earned(k.b, k.kept.Read, "", to, now)
	if err != nil {
		t.Fatal(err)
	}
	first := ""
	for _, by := range tally.MoneyWays {
		m := tally.AddMoney(k.b, days, by, from, to)
		var sum tally.MoneyRow
		for _, r := range m.Rows {
			sum.Revenue, sum.Material, sum.Seconds = sum.Revenue+r.Revenue, sum.Material+r.Material, sum.Seconds+r.Seconds
			sum.Paid, sum.Free, sum.Unpriced = sum.Paid+r.Paid, sum.Free+r.Free, sum.Unpriced+r.Unpriced
		}
		said := fmt.Sprint(sum.Revenue, sum.Material, sum.Seconds, sum.Paid, sum.Free, sum.Unpriced)
		if all := fmt.Sprint(m.All.Revenue, m.All.Material, m.All.Seconds, m.All.Paid, m.All.Free, m.All.Unpriced); said != all || (first != "" && said != first) {
			t.Fatalf("by %s the rows come to %s, all to %s, the way before to %s", by, said, all, first)
		}
		first = said
	}
	sums, _, err := Sums(k.b, k.kept.Read, from, to, now)
	if err != nil {
		t.Fatal(err)
	}
	left, seconds := map[string]int64{}, int64(0)
	for _, p := range sums.Products {
		left[p.Product] += p.Amount.N
	}
	for i := range days {
		if days[i].Date < from {
			continue
		}
		seconds += days[i].Seconds
		for _, c := range days[i].Calls {
			for _, u := range c.Used {
				left[u.Product] -= u.Amount.N
			}
		}
	}
	for p, n := range left {
		if n != 0 {
			t.Fatalf("of %s %d are laid and not paid for", p, n)
		}
	}
	if seconds != sums.Seconds {
		t.Fatalf("%d s are shared out of %d", seconds, sums.Seconds)
	}
}

// TestMoneyOfADay: two visits and a call-back, by hand: 55.50 + 48.25, the call-back free; product at 61.37 for 2.5 gal.
func TestMoneyOfADay(t *testing.T) {
	k := newSeason(t)
	for _, l := range []string{
		`{"fact":"day_opened","date":"2026-05-04","operator":"R. Example","route":["418 Alder","77 Fir"]}`,
		`{"fact":"visit_begun","lawn":"418 Alder"}`,
		`{"fact":"sprayed","lawn":"418 Alder","applicator":"gun"}`,
		`{"fact":"visit_done","lawn":"418 Alder"}`,
		`{"fact":"visit_begun","lawn":"77 Fir"}`, `{"fact":"visit_done","lawn":"77 Fir"}`,
		`{"fact":"visit_begun","lawn":"418 Alder","kind":"call_back","cause":"clover"}`, `{"fact":"visit_done","lawn":"418 Alder"}`,
		`{"fact":"visit_begun","lawn":"12 Elm"}`, `{"fact":"visit_done","lawn":"12 Elm"}`,
		`{"fact":"paid","what":"fuel","paid_usd":12.5,"fuel_gal":4}`, `{"fact":"invested","thing":"rig","cost_usd":80,"date":"2026-05-01"}`,
	} {
		k.must(t, l)
	}
	days, err := Earned(k.b, k.kept.Read, "", "", core.Maybe[core.Moment]{})
	if err != nil || len(days) != 1 {
		t.Fatalf("%v %v", days, err)
	}
	m := tally.AddMoney(k.b, days, "lawn", "", "")
	if m.All.Revenue != 10_375 || m.All.Paid != 2 || m.All.Free != 1 || m.All.Unpriced != 1 || m.All.ByNow != 0 {
		t.Errorf("%+v", m.All)
	}
	var laid measure.Volume
	for _, c := range days[0].Calls {
		for _, u := range c.Used {
			if u.Product == "warm weed" {
				laid += measure.Volume(u.Amount.N)
			}
		}
	}
	if want := measure.Dollars(float64(laid) / float64(measure.USGallon) / 2.5 * 61.37); laid == 0 || m.All.Material != want {
		t.Errorf("%s gal cost %s, by hand %s", laid.Text(), m.All.Material.Text(), want.Text())
	}
	again := fmt.Sprint(m.Again)
	if want := "[{product warm weed 1 1 $0.00} {cause clover 1 0 $0.00}]"; len(m.Again) != 2 || m.Again[1].Name != "clover" || m.Again[0].Free != 1 {
		t.Errorf("call-backs %s, want like %s", again, want)
	}
	p := tally.Paybacks(k.b, days, "2026-05-04", tally.Assumed{Stops: 20, Days: 100})
	if len(p) != 1 || p[0].Net != 10_375-m.All.Material-1_250 || p[0].Paid == "" && p[0].Left <= 0 {
		t.Errorf("%+v", p)
	}
	if len(p[0].Unknown) == 0 {
		t.Error("the lawn without a price is not named")
	}
}
