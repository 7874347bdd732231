package main

import "testing"

// TestTurnstoneByHand holds the program to this page.
//
//	Turnstone, west coast of Scotland, June (the hottest month aboard: July and August are left out)
//
//	Box      45 L as 1 : 1 : 1.1: side ∛(0.045/1.1) = 0.3446 m, height 0.3790 m
//	Foam     extruded polystyrene, dry, 80 mm all round: 0.080/0.033 = 2.424 m²K/W
//	                    area     1/h + t/k + 1/h          = R        U       UA       U·t
//	  top               0.1187   0.1639 + 2.424 + 0.1639  = 2.752    0.363   0.0431   0.0291
//	  bottom            0.1187   0.1075 + 2.424 + 0.1075  = 2.639    0.379   0.0450   0.0303
//	  inboard           0.1306   0.1205 + 2.424 + 0.1205  = 2.665    0.375   0.0490   0.0300
//	  outboard, sea     0.1306   0.1205 + 2.424 + 0.002   = 2.547    0.393   0.0513   0.0314
//	  fore, aft         0.1306   as inboard                                  0.0490   0.0300   twice
//	                                                                sum      0.2864
//	Edges    top ring     0.54 × 0.3446 × (3 × 0.0296 + 0.0303)                       = 0.0222
//	         bottom ring  0.54 × 0.3446 × (3 × 0.0302 + 0.0309)                       = 0.0226
//	         uprights     0.54 × 0.3790 × 2 × (0.0300 + 0.0307)                       = 0.0248   0.0696
//	Corners  8 × 0.15 × 0.0302 × 0.080                                                = 0.0029
//	Seal     good: 0.08 × 2 × (0.30 + 0.35)                                           = 0.104
//	Drain    trapped                                                                  = 0
//	Drawn    0.2864 + 0.0696 + 0.0029 + 0.104                                         = 0.463 W/K
//	  sea    outboard 0.0513 + half its edges 0.0240/2 + its share of corners         = 0.0637
//	  cabin  the rest                                                                 = 0.399
//	Ice test 1.2 kg in 24 h, 16 °C outside, 3 °C inside: 1.2 × 333.6/3.6/24/13        = 0.356 W/K
//	Together exp((16 ln 0.463 + 100 ln 0.356)/116)                                    = 0.369 W/K
//	         all parts × 0.369/0.463 = 0.797: top 0.0344, bottom 0.0359, inboard, fore and aft 0.0391,
//	         outboard 0.0409, seal 0.0829, edges and corners 0.0578
//
//	Cabin    12.7 + 2 = 14.7 °C; half the range 3.15 K; 7 to 21 h 16.3 °C, 12 to 18 h 17.5 °C; food 5 °C
//	Leak     0.797 × (0.399 × 9.7 + 0.0637 × (11.2 - 5)) = 0.797 × (3.87 + 0.395)     = 3.40 W
//	Openings w 7.4 g/kg of moist air = 0.00746; 35.3 - 18.6 = 16.7 kJ/kg; 0.830 m³/kg;
//	         free air 0.5 × (45 - 11.25) = 16.9 L; 8 × 0.3 × 0.0169/0.830 × 16.7/86.4 = 0.0094 W
//	Goods    2 × 1.2 × 0.25 = 0.6 kg/d; 0.6 × 3.6 × 12.5/86.4                         = 0.312 W
//	Gain                                                                              = 3.72 W
//	Ice      86.4 × 3.72/342.0                                                        = 0.94 kg/d
//	         a load 45 × 0.25 × 0.92 = 10.4 kg, gone in 11 days
//
//	Small    50 W as usual, fins: Tc 14.7 + 20 = 34.7; 50 × (1 + 0.008 × 10.3) = 54.1
//	         Te -7.2: compressor 54.1 exp(0.045 × 2.8) = 61.4, plate 5 × 12.2 = 61.0: 61.2 W
//	         COP 0.33 × 265.95/41.9 = 2.09; 61.2/2.09 = 29.3 W
//	         runs 3.72/61.2 = 0.0608; 24 × (0.0608 × 29.3 + 0.1)                      = 45.2 Wh/d
//	Larger   100 W as usual, fan: 14.7 + 12 is under 30, so Tc 30; 100 × (1 + 0.008 × 15) = 112
//	         Te -13.8: compressor 112 exp(-0.045 × 3.8) = 94.4, plate 5 × 18.8 = 94.0: 94.2 W
//	         COP 0.33 × 259.35/43.8 = 1.95; 94.2/1.95 + 3 = 51.3 W
//	         runs 0.0395; 24 × (0.0395 × 51.3 + 0.1)                                  = 51.0 Wh/d
//	Sun      15 June, 56.4° N: declination 0.407, sunset 2.277 rad; a 0.882, b 0.212; hours from noon
//	         0.1034 0.0978 0.0874 0.0734 0.0573 0.0410 0.0256 0.0123 0.0018; 2 × sum of squares 0.0781
//	         4.63 kWh × 0.0781 = 362 W/m², air 14.1, cells 14.1 + 43 × 362/800 = 33.6: 0.966
//	         20 × 4.63 × 0.75 × 0.80 × 0.94 × 0.966                                   = 50.5 Wh/d
//
//	Money, 10 years, 28 nights; not to be sold. Trips of 2 nights, a stop every 2 days: none on the way, so
//	all ice is from home and none billed. Food aboard 0.6 × 2/2 = 0.6 kg.
//	  ice     spoiled 0.6 × 14.5 warm days (run) × 0.80                               =  6.96 a year
//	          × 8.5302                                                                = 59.4
//	  dry     2 × 28 × 1.60 = 89.6 a year; × 8.5302                                   = 764
//	  small   first 750 + 120 + 70                                                    = 940
//	          15 + engine 0.375 × 1.50 + wear 1.80 × 0.73 + 0.6 × 0.4 × 0.80 (run)
//	          = 15 + 0.56 + 1.31 + 0.19                                               = 17.1 a year
//	          940 + 17.1 × 8.5302 = 1086; /8.5302                                     = 127.3 a year
//	  larger  first 2200 + 500 + 70                                                   = 2770
//	          55 + 0.377 × 1.50 + 2.05 × 0.73 (run)                                   = 57.1 a year
//	          2770 + 57.1 × 8.5302 = 3257; /8.5302                                    = 381.8 a year
//	Even     ice 6.96/28 = 0.249 a night, nothing fixed
//	  small  fixed 127.3 - 17.1 + 15 = 125.2; a night 2.1/28 = 0.074; 125.2/0.1747    = 717 nights
//	  larger fixed 381.8 - 57.1 + 55 = 379.7; a night 2.1/28 = 0.074; 379.7/0.1750    = 2170 nights
//	         neither within a year's 365, so never
func TestTurnstoneByHand(t *testing.T) {
	sheet := figuresOf(t, "turnstone")
	holdToPage(t, sheet, []handRow{
		{"box/volume_l", 45},
		{"box/ua_drawn_w_per_k", 0.463},
		{"box/evidence/ice test/ua_w_per_k", 0.356},
		{"box/ua_w_per_k", 0.369},
		{"box/heat_by_source/top, with the lid/ua_w_per_k", 0.0344},
		{"box/heat_by_source/bottom/ua_w_per_k", 0.0359},
		{"box/heat_by_source/inboard wall/ua_w_per_k", 0.0391},
		{"box/heat_by_source/outboard wall/ua_w_per_k", 0.0409},
		{"box/heat_by_source/fore wall/ua_w_per_k", 0.0391},
		{"box/heat_by_source/aft wall/ua_w_per_k", 0.0391},
		{"box/heat_by_source/lid seal/ua_w_per_k", 0.0829},
		{"box/heat_by_source/edges and corners/ua_w_per_k", 0.0578},
		{"box/heat_by_source_month", 6},
		{"months/6/cabin_c", 14.7},
		{"months/6/leak_w", 3.40},
		{"months/6/openings_w", 0.0094},
		{"months/6/goods_w", 0.312},
		{"months/6/heat_gain_w", 3.72},
		{"months/6/ice_kg_per_day", 0.94},
		{"box/ice_capacity_kg", 10.4},
		{"months/6/solar_wh_per_day", 50.5},
		{"unit_figures/small/condenser_c", 34.7},
		{"unit_figures/small/plate_c", -7.2},
		{"unit_figures/small/capacity_w", 61.2},
		{"unit_figures/small/cop", 2.09},
		{"unit_figures/small/run_share", 0.0608},
		{"months/6/small_wh_per_day", 45.2},
		{"unit_figures/larger/condenser_c", 30},
		{"unit_figures/larger/plate_c", -13.8},
		{"unit_figures/larger/capacity_w", 94.2},
		{"unit_figures/larger/cop", 1.95},
		{"unit_figures/larger/run_share", 0.0395},
		{"months/6/larger_wh_per_day", 51.0},

		{"options/ice/as_told/season/ice_bought_kg_per_year", 0},
		{"options/ice/as_told/first_cost", 0},
		{"options/ice/as_told/per_year", 6.96},
		{"options/ice/as_told/present_cost", 59.4},
		{"options/dry/as_told/per_year", 89.6},
		{"options/dry/as_told/present_cost", 764},
		{"options/small/as_told/first_cost", 940},
		{"options/small/as_told/per_year", 17.1},
		{"options/small/as_told/present_cost", 1086},
		{"options/small/as_told/yearly_equivalent", 127.3},
		{"options/larger/as_told/first_cost", 2770},
		{"options/larger/as_told/per_year", 57.1},
		{"options/larger/as_told/present_cost", 3257},
		{"options/larger/as_told/yearly_equivalent", 381.8},
	})
	neverEven(t, sheet)
}
