package core

// The names of the settings that the application record is filled from.
const (
	Licence           = "licence"
	LicenceCategory   = "licence_category"
	Supervisor        = "supervisor"
	SupervisorLicence = "supervisor_licence"
	Helpers           = "helpers"
	Business          = "business"
	BusinessAddress   = "business_address"
	BusinessPhone     = "business_phone"
	BusinessLicence   = "business_licence"
	State             = "state"
	SpillLine         = "spill_line"
	AgricultureLine   = "agriculture_line"
)
