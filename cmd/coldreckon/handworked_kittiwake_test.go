package main

import "testing"

// TestKittiwakeByHand holds the program to this page.
//
//	Kittiwake, Cyclades, August (the hottest month aboard)
//
//	Box      110 L as 1 : 1 : 1.1: side ∛(0.110/1.1) = 0.4642 m, height 0.5106 m
//	Foam     old polyurethane, k damp 0.028 exp(0.24) = 0.0356, wet 0.028 exp(0.72) = 0.0575;
//	         50 mm damp 1.404, top 30 mm damp 0.843, bottom 50 mm wet 0.870 m²K/W
//	                    area     1/h + t/k + 1/h          = R        U       UA       U·t
//	  top               0.2155   0.1639 + 0.843 + 0.1639  = 1.171    0.854   0.184    0.0256
//	  bottom            0.2155   0.1075 + 0.870 + 0.1075  = 1.085    0.922   0.199    0.0461
//	  inboard           0.2370   0.1205 + 1.404 + 0.1205  = 1.645    0.608   0.144    0.0304
//	  outboard, sea     0.2370   0.1205 + 1.404 + 0.002   = 1.527    0.655   0.155    0.0328
//	  fore, aft         0.2370   as inboard                                  0.144    0.0304   twice
//	                                                                sum      0.970
//	Edges    top ring     0.54 × 0.4642 × (3 × 0.0281 + 0.0294)                       = 0.0285
//	         bottom ring  0.54 × 0.4642 × (3 × 0.0379 + 0.0391)                       = 0.0383
//	         uprights     0.54 × 0.5106 × 2 × (0.0304 + 0.0316)                       = 0.0342   0.101
//	Corners  4 × 0.15 × 0.0292 × 0.0433 + 4 × 0.15 × 0.0360 × 0.050                   = 0.0018
//	Seal     worn: 0.20 × 2 × (0.35 + 0.40)                                           = 0.300
//	Drain    trapped                                                                  = 0
//	Drawn    0.970 + 0.101 + 0.002 + 0.300                                            = 1.373 W/K
//	  sea    outboard 0.155 + half its edges 0.0346/2 + its share of corners          = 0.173
//	  cabin  the rest                                                                 = 1.200
//	No test, no memory of ice: the drawing stands.
//
//	Cabin    25.1 + 2 = 27.1 °C; half the range 2.95 K; 7 to 21 h 28.6 °C, 12 to 18 h 29.8 °C; food 4 °C
//	Leak     1.200 × 23.1 + 0.173 × (24.5 - 4) = 27.7 + 3.55                          = 31.3 W
//	Openings w 14.8 g/kg of moist air = 0.01502; 67.1 - 16.6 = 50.5 kJ/kg; 0.875 m³/kg;
//	         free air 0.5 × (110 - 36.7) = 36.7 L; 15 × 0.3 × 0.0367/0.875 × 50.5/86.4 = 0.110 W
//	Goods    2 × 1.8 × 0.3 = 1.08 kg/d; 1.08 × 3.6 × 25.8/86.4                        = 1.16 W
//	Gain                                                                              = 32.54 W
//	Ice      86.4 × 32.54/342.0                                                       = 8.22 kg/d
//	         a load 110/3 × 0.56 = 20.5 kg, gone in 2.5 days
//
//	Small    50 W, fan: Tc 27.1 + 12 = 39.1; 50 × (1 + 0.008 × 5.9) = 52.4
//	         Te -7.6: compressor 52.4 exp(0.045 × 2.4) = 58.3, plate 5 × 11.6 = 58.0: 58.2 W
//	         COP 0.33 × 265.55/46.7 = 1.88; 58.2/1.88 + 3 = 34.0 W
//	         gain beside a 4 L plate 32.6 W, runs 0.560; 24 × (0.560 × 34.0 + 0.1)    = 459 Wh/d
//	Larger   95 W, sea, cold-storing: Tc 24.5 + 6 = 30.5; Te -10; 95 × (1 + 0.008 × 14.5) = 106 W
//	         COP 0.33 × 263.15/40.5 = 2.14; 106/2.14 + 3 = 52.5 W
//	         runs 32.6/106 = 0.307; 24 × (0.307 × 52.5 + 0.1)                         = 389 Wh/d
//	Sun      15 August, 37.3° N: declination 0.239, sunset 1.757 rad; a 0.736, b 0.350; hours from noon
//	         0.1281 0.1181 0.0998 0.0757 0.0496 0.0248 0.0038; 2 × sum of squares 0.0983
//	         7.00 kWh × 0.0983 = 688 W/m², air 26.7, cells 26.7 + 25 × 688/800 = 48.2: 0.907
//	         160 × 7.00 × 0.85 × 0.96 × 0.94 × 0.907                                  = 779 Wh/d
//
//	Ice in a year  120 nights are 3 trips of 40. A stop every 4 days: 9 after the first on each trip, 27 in
//	         the year, half of them sell: 14, and the 3 first: 17 errands. From one to the next is 4 or 8
//	         days, of which even May (21.3 °C, about 6 kg/d) takes more than the 16 kg one can carry:
//	         17 × 16                                                                  = 272 kg
//	Cold     16 kg less 12 % is 14.1 kg, and (14.1/20.5)^(2/3) = 0.78 of a full load's surface: a load
//	         that holds 4 °C in August holds 5.1 at first and warmer every hour: over 5 °C, no cold day
//
//	Money, 8 years, 120 nights; to be sold. Food aboard 1.08 × 4/2 = 2.16 kg.
//	  ice     272 × 1.60 + 17 × 5 + 2.16 × 120 × 0.80 = 435.2 + 85.0 + 207.4          = 727.6 a year
//	          × 7.0197                                                                = 5107
//	  dry     2 × 120 × 1.60 = 384 a year; × 7.0197                                   = 2696
//	  small   first 950 + 120 + 70                                                    = 1140
//	          19 + 3.58 × 0.35 + 27.29 × 1.50 + 21.61 × 0.73 + 2.16 × 3 × 0.80 (run)
//	          = 19 + 1.25 + 40.94 + 15.78 + 5.18                                      =  82.1 a year
//	          sold: 0.15 × 1070 × 0.7894 = 127
//	          1140 + 82.1 × 7.0197 - 127 = 1590; /7.0197                              = 226.5 a year
//	  larger  first 2700 + 500 + 70 + 500 + 350                                       = 4120
//	          67.5 + 3.11 × 0.35 + 24.77 × 1.50 + 19.68 × 0.73 + 5.18 (run)           = 125.3 a year
//	          sold: 0.15 × 3200 × 0.7894 = 379
//	          4120 + 125.3 × 7.0197 - 379 = 4621; /7.0197                             = 658 a year
//	Even     ice 727.6/120 = 6.063 a night, nothing fixed
//	  small  fixed 226.5 - 82.1 + 19 = 163.4; a night 63.1/120 = 0.526; 163.4/5.537   =  29.5 nights
//	  larger fixed 658.2 - 125.3 + 67.5 = 600.4; a night 57.8/120 = 0.482; 600.4/5.581 = 107.6 nights
func TestKittiwakeByHand(t *testing.T) {
	sheet := figuresOf(t, "kittiwake")
	holdToPage(t, sheet, []handRow{
		{"box/volume_l", 110},
		{"box/ua_drawn_w_per_k", 1.373},
		{"box/ua_w_per_k", 1.373},
		{"box/heat_by_source/top, with the lid/ua_w_per_k", 0.184},
		{"box/heat_by_source/bottom/ua_w_per_k", 0.199},
		{"box/heat_by_source/inboard wall/ua_w_per_k", 0.144},
		{"box/heat_by_source/outboard wall/ua_w_per_k", 0.155},
		{"box/heat_by_source/fore wall/ua_w_per_k", 0.144},
		{"box/heat_by_source/aft wall/ua_w_per_k", 0.144},
		{"box/heat_by_source/lid seal/ua_w_per_k", 0.300},
		{"box/heat_by_source/edges and corners/ua_w_per_k", 0.1028},
		{"box/heat_by_source_month", 8},
		{"months/8/cabin_c", 27.1},
		{"months/8/leak_w", 31.3},
		{"months/8/openings_w", 0.110},
		{"months/8/goods_w", 1.16},
		{"months/8/heat_gain_w", 32.5},
		{"months/8/ice_kg_per_day", 8.22},
		{"box/ice_capacity_kg", 20.5},
		{"months/8/solar_wh_per_day", 779},
		{"unit_figures/small/condenser_c", 39.1},
		{"unit_figures/small/plate_c", -7.6},
		{"unit_figures/small/capacity_w", 58.2},
		{"unit_figures/small/cop", 1.88},
		{"unit_figures/small/run_share", 0.560},
		{"months/8/small_wh_per_day", 459},
		{"unit_figures/larger/condenser_c", 30.5},
		{"unit_figures/larger/plate_c", -10},
		{"unit_figures/larger/capacity_w", 106},
		{"unit_figures/larger/cop", 2.14},
		{"unit_figures/larger/run_share", 0.307},
		{"months/8/larger_wh_per_day", 389},

		{"options/ice/as_told/season/ice_bought_kg_per_year", 272},
		{"options/ice/as_told/season/ice_errands_per_year", 17},
		{"options/ice/as_told/cold_days_per_year", 0},
		{"options/ice/as_told/first_cost", 0},
		{"options/ice/as_told/per_year", 727.6},
		{"options/ice/as_told/present_cost", 5107},
		{"options/dry/as_told/per_year", 384},
		{"options/dry/as_told/present_cost", 2696},
		{"options/small/as_told/first_cost", 1140},
		{"options/small/as_told/per_year", 82.1},
		{"options/small/as_told/present_cost", 1590},
		{"options/small/as_told/yearly_equivalent", 226.5},
		{"options/larger/as_told/first_cost", 4120},
		{"options/larger/as_told/per_year", 125.3},
		{"options/larger/as_told/present_cost", 4621},
		{"options/larger/as_told/yearly_equivalent", 658},
		{"break_even/small/nights_per_year", 29.5},
		{"break_even/larger/nights_per_year", 107.6},
	})
}
