package rules

import "testing"

func TestEmbedded(t *testing.T) {
	pack, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range pack.RunExamples() {
		t.Error(f)
	}
	t.Logf("%d criteria, %d cautions, %d prices, %d examples", len(pack.Book.Criteria), len(pack.Cautions), len(pack.Book.Prices), pack.Examples())
}
