package view_test

import (
	"testing"

	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

func TestDump(t *testing.T) {
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), viewtest.Program())
	t.Logf("%v", problems)
	t.Logf("%+v", v)
}
