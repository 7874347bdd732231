package main

import "testing"

// TestSaltmeadowByHand holds the program to this page.
//
//	Saltmeadow, Windward Islands, August (the hottest month aboard)
//
//	Box      24 × 22 × 24 in = 0.6096 × 0.5588 × 0.6096 m = 207.7 L; 3 in = 76.2 mm, top 2 in = 50.8 mm
//	Foam     polyurethane, dry: k = 0.024; 76.2 mm is 3.175, 50.8 mm 2.117 m²K/W
//	                    area     1/h + t/k + 1/h          = R        U       UA       U·t
//	  top               0.3406   0.1639 + 2.117 + 0.1639  = 2.445    0.409   0.1393   0.0208
//	  bottom            0.3406   0.1075 + 3.175 + 0.1075  = 3.390    0.295   0.1005   0.0225
//	  inboard           0.3716   0.1205 + 3.175 + 0.1205  = 3.416    0.293   0.1088   0.0223
//	  outboard, sea     0.3716   0.1205 + 3.175 + 0.002   = 3.297    0.303   0.1127   0.0231
//	  fore, aft         0.3406   as inboard                                  0.0997   0.0223   twice
//	                                                                sum      0.661
//	Edges    top ring     0.54 × (0.6096 × (0.0216 + 0.0220) + 2 × 0.5588 × 0.0215)   = 0.0273
//	         bottom ring  0.54 × (0.6096 × (0.0224 + 0.0228) + 2 × 0.5588 × 0.0224)   = 0.0284
//	         uprights     0.54 × 0.6096 × 2 × (0.0223 + 0.0227)                       = 0.0296   0.0853
//	Corners  4 × 0.15 × 0.0220 × 0.0677 + 4 × 0.15 × 0.0225 × 0.0762                  = 0.0019
//	Seal     good: 0.08 × 2 × (14 + 18) in = 0.08 × 1.626                             = 0.130
//	Drain    none                                                                     = 0
//	Drawn    0.661 + 0.085 + 0.002 + 0.130                                            = 0.878 W/K
//	  sea    outboard 0.113 + half its edges 0.0297/2 + its share of corners          = 0.128
//	  cabin  the rest                                                                 = 0.750
//	No test, no memory of ice: the drawing stands.
//
//	Cabin    27.3 + 2 F = 28.4 °C; half the range 3.2 K; 7 to 21 h 30.0 °C, 12 to 18 h 31.3 °C; food 40 °F = 4.44 °C
//	Leak     0.750 × 23.97 + 0.128 × (28.4 - 4.44) = 17.98 + 3.07                     = 21.0 W
//	Openings w 19.2 g/kg of moist air = 0.01958; 80.2 - 17.5 = 62.7 kJ/kg; 0.886 m³/kg;
//	         free air 0.5 × (207.7 - 69.2) = 69.2 L; 20 × 0.3 × 0.0692/0.886 × 62.7/86.4 = 0.340 W
//	Goods    2 × 3.5 lb × 0.35 = 1.11 kg/d; 1.11 × 3.6 × (31.3 - 4.44)/86.4           = 1.24 W
//	Gain                                                                              = 22.6 W
//	Ice      86.4 × 22.6/342.0                                                        = 5.71 kg/d
//	         a load 207.7/3 × 0.92 = 63.7 kg, gone in 11 days
//
//	Small    55 W, fan: Tc 28.4 + 12 = 40.4; 55 × (1 + 0.008 × 4.6) = 57.0
//	         Te -8.0: compressor 57.0 exp(0.045 × 2.0) = 62.4, plate 5 × 12.44 = 62.2: 62.3 W
//	         COP 0.33 × 265.15/48.4 = 1.81; 62.3/1.81 + 3 = 37.4 W
//	         gain beside a 4 L plate 22.8 W, runs 0.366; 24 × (0.366 × 37.4 + 0.1)    = 331 Wh/d
//	Larger   100 W, sea: Tc 28.4 + 6 = 34.4; 100 × (1 + 0.008 × 10.6) = 108.5
//	         Te -13.8: compressor 108.5 exp(-0.045 × 3.8) = 91.4, plate 5 × 18.24 = 91.2: 91.3 W
//	         COP 0.33 × 259.35/48.2 = 1.78; 91.3/1.78 + 3 = 54.3 W
//	         runs 0.250; 24 × (0.250 × 54.3 + 0.1)                                    = 328 Wh/d
//	Sun      15 August, 14.2° N: declination 0.239, sunset 1.632 rad; a 0.686, b 0.398; hours from noon
//	         0.1365 0.1245 0.1028 0.0746 0.0447 0.0170; 2 × sum of squares 0.105
//	         5.58 kWh × 0.105 = 586 W/m², air 29.1, cells 29.1 + 25 × 586/800 = 47.4: 0.910
//	         350 × 5.58 × 0.92 × 0.96 × 0.94 × 0.910                                  = 1475 Wh/d
//
//	Ice in a year  one trip of 365 nights, a stop every 5 days: 72 after the first, of which 0.4 sell: 29,
//	         and the first: 30 errands. From one to the next is 10 or 15 days, of which each takes more
//	         than the 50 lb one can carry: 30 × 22.68                                 = 680 kg
//	Cold     50 lb less 12 % is 20.0 kg, and (20.0/63.7)^(2/3) = 0.46 of a full load's surface: a load that
//	         holds 4 °C full holds 8.7 at first, over the 5.4 allowed: no cold day
//
//	Money, 10 years, 365 nights; not to be sold. Food aboard 1.111 × 5/2 = 2.778 kg.
//	  ice     680.4 kg at 0.75/lb = 1.6535/kg, 30 × 10, 2.778 × 365 × 0.80: 1125 + 300 + 811 = 2236 a year
//	          × 8.5302                                                                = 19075
//	  dry     2 × 365 × 1.60 = 1168 a year; × 8.5302                                  = 9963
//	  small   first 1200 + 120 + 70                                                   = 1390
//	          24 + engine 26.21 × 1.50 + wear 59.10 × 0.73 (run)                      = 106.5 a year
//	          1390 + 106.5 × 8.5302 = 2298; /8.5302                                   = 269.4 a year
//	  larger  first 3000 + 500 + 70 + 500 + 350                                       = 4420
//	          75 + 26.32 × 1.50 + 59.36 × 0.73 (run)                                  = 157.8 a year
//	          4420 + 157.8 × 8.5302 = 5766; /8.5302                                   = 676 a year
//	Even     ice 2236/365 = 6.127 a night, nothing fixed
//	  small  fixed 269.4 - 106.5 + 24 = 186.9; a night 82.5/365 = 0.226; 186.9/5.901  =  31.7 nights
//	  larger fixed 676.0 - 157.8 + 75 = 593.2; a night 82.8/365 = 0.227; 593.2/5.900  = 100.5 nights
func TestSaltmeadowByHand(t *testing.T) {
	sheet := figuresOf(t, "saltmeadow")
	holdToPage(t, sheet, []handRow{
		{"box/volume_l", 207.7},
		{"box/ua_drawn_w_per_k", 0.878},
		{"box/ua_w_per_k", 0.878},
		{"box/heat_by_source/top, with the lid/ua_w_per_k", 0.1393},
		{"box/heat_by_source/bottom/ua_w_per_k", 0.1005},
		{"box/heat_by_source/inboard wall/ua_w_per_k", 0.1088},
		{"box/heat_by_source/outboard wall/ua_w_per_k", 0.1127},
		{"box/heat_by_source/fore wall/ua_w_per_k", 0.0997},
		{"box/heat_by_source/aft wall/ua_w_per_k", 0.0997},
		{"box/heat_by_source/lid seal/ua_w_per_k", 0.130},
		{"box/heat_by_source/edges and corners/ua_w_per_k", 0.0872},
		{"box/heat_by_source_month", 8},
		{"months/8/cabin_c", 28.4},
		{"months/8/leak_w", 21.0},
		{"months/8/openings_w", 0.340},
		{"months/8/goods_w", 1.24},
		{"months/8/heat_gain_w", 22.6},
		{"months/8/ice_kg_per_day", 5.71},
		{"box/ice_capacity_kg", 63.7},
		{"months/8/solar_wh_per_day", 1475},
		{"unit_figures/small/condenser_c", 40.4},
		{"unit_figures/small/plate_c", -8.0},
		{"unit_figures/small/capacity_w", 62.3},
		{"unit_figures/small/cop", 1.81},
		{"unit_figures/small/run_share", 0.366},
		{"months/8/small_wh_per_day", 331},
		{"unit_figures/larger/condenser_c", 34.4},
		{"unit_figures/larger/plate_c", -13.8},
		{"unit_figures/larger/capacity_w", 91.3},
		{"unit_figures/larger/cop", 1.78},
		{"unit_figures/larger/run_share", 0.250},
		{"months/8/larger_wh_per_day", 328},

		{"options/ice/as_told/season/ice_bought_kg_per_year", 680},
		{"options/ice/as_told/season/ice_errands_per_year", 30},
		{"options/ice/as_told/cold_days_per_year", 0},
		{"options/ice/as_told/first_cost", 0},
		{"options/ice/as_told/per_year", 2236},
		{"options/ice/as_told/present_cost", 19075},
		{"options/dry/as_told/per_year", 1168},
		{"options/dry/as_told/present_cost", 9963},
		{"options/small/as_told/first_cost", 1390},
		{"options/small/as_told/per_year", 106.5},
		{"options/small/as_told/present_cost", 2298},
		{"options/small/as_told/yearly_equivalent", 269.4},
		{"options/larger/as_told/first_cost", 4420},
		{"options/larger/as_told/per_year", 157.8},
		{"options/larger/as_told/present_cost", 5766},
		{"options/larger/as_told/yearly_equivalent", 676},
		{"break_even/small/nights_per_year", 31.7},
		{"break_even/larger/nights_per_year", 100.5},
	})
}
