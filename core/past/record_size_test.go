package past

import (
	"bytes"
	"fmt"
	"testing"
)

// TestTheRecordOfADayIsSmall: the row of a usual day of 25 lawns with two zones each stays under 16 kB; what all of them share is kept once.
func TestTheRecordOfADayIsSmall(t *testing.T) {
	k := newSeason(t)
	k.must(t, `{"fact":"product","name":"warm weed","form":"liquid","kind":"herbicide","registration":"00000-12","restricted":"no","signal":"caution","reentry":"keep off until it has dried","actives":[{"name":"2,4-D","lb_per_gal":4},{"name":"dicamba","lb_per_gal":1}],"grasses":["bermudagrass_common","tall_fescue"]}`)
	for i := range 25 {
		k.must(t, fmt.Sprintf(`{"fact":"lawn","name":"%d Example Lane","customer":"Customer %d","address":"%d Example Lane","phone":"555-01%02d","zip":"00005","town":"Exampleton","county":"Sample","zones":[{"name":"front","grass":"tall_fescue","area_sqft":3000},{"name":"back","grass":"tall_fescue","area_sqft":2000}]}`, i, i, i, i))
	}
	if err := k.open(); err != nil {
		t.Fatal(err)
	}
	k.must(t, `{"fact":"weather","wind_mph":5,"wind_from":"SW","temp_f":71,"rh_pct":50}`)
	for i := range 25 {
		k.must(t, fmt.Sprintf(`{"fact":"visit_begun","lawn":"%d Example Lane"}`, i))
		k.must(t, fmt.Sprintf(`{"fact":"sprayed","lawn":"%d Example Lane","applicator":"gun","by":"gallons","volume_gal":5}`, i))
		k.must(t, fmt.Sprintf(`{"fact":"visit_done","lawn":"%d Example Lane"}`, i))
	}
	k.must(t, `{"fact":"day_closed"}`)
	list, err := Records(k.b, k.kept.Read, Query{})
	if err != nil || len(list) < 50 {
		t.Fatalf("%d records, %v", len(list), err)
	}
	for _, r := range k.kept.rows {
		if bytes.HasPrefix(r.Key, []byte(recordPrefix)) {
			t.Logf("%d records in %d bytes", len(list), len(r.Value))
			if len(r.Value) > 16_000 {
				t.Errorf("%d records take %d bytes", len(list), len(r.Value))
			}
		}
	}
}
