package check

import (
	"fmt"
	"strings"
	"testing"
)

// stockOf is a line that counts a product.
func stockOf(product, unit string, n float64) string {
	return fmt.Sprintf(`{"fact":"stocked","product":%q,"what":"counted","amount_%s":%g}`+"\n", product, unit, n)
}

// TestStockOfLoads: what is planned for all tanks together is held against the stock; a stock that was never counted says nothing.
func TestStockOfLoads(t *testing.T) {
	b := play(t, loadedLines)
	twenty := planOf("c", fluidOunces("W1", 20))
	if f := loadFinding(BeforeLoad(b, clock, twenty), "stock", ""); f != nil || len(Stock(b)) > 0 {
		t.Errorf("nothing was counted: %+v", f)
	}
	more(t, b, stockOf("W1", "fl_oz", 32))
	if f := loadFinding(BeforeLoad(b, clock, twenty), "stock", ""); f != nil {
		t.Errorf("32 fl oz are enough for 20: %+v", f)
	}
	log(t, b, twenty, planOf("b", fluidOunces("W1", 16)))
	l := BeforeLoad(b, clock, b.LoadPlan("c"))
	f := loadFinding(l, "stock", "")
	if f == nil || f.Weight != Ask || l.Verdict < Ask || f.Limit.V != 0.25 || !strings.Contains(f.Says, "36.0 fl oz of W1 are to be loaded, with the other tanks, and the stock is 32.0 fl oz: 4.00 fl oz short.") ||
		f.Do != "Put at least 4.00 fl oz more on the truck, or count what is there." || f.Ground == "" || f.Source == "" {
		t.Errorf("%+v", f)
	}
	if got := Stock(b); len(got) != 1 || got[0].Weight != Ask || got[0].Figured.V < 0.28124 || got[0].Figured.V > 0.28126 {
		t.Errorf("%+v", got)
	}
	more(t, b, `{"fact":"load_planned","into":"b","volume_gal":0}
{"fact":"load_planned","into":"c","volume_gal":0}
{"fact":"loaded","into":"c","volume_gal":10,"parts":[{"product":"W1","amount_fl_oz":40}]}`)
	if got := Stock(b); len(got) != 1 || got[0].Weight != Note || got[0].Says != "The stock of W1 is -8.00 fl oz: more was put in than was there." || got[0].Do != "Count what is there, and enter what was bought." {
		t.Errorf("%+v", got)
	}
}
