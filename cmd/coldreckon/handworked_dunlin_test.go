package main

import "testing"

// TestDunlinByHand holds the program to this page.
//
//	Dunlin, Maine coast, August (the hottest month aboard)
//
//	Box      20 × 18 × 20 in = 0.508 × 0.457 × 0.508 m = 118.0 L; 1 1/2 in = 38.1 mm, top 1/2 in = 12.7 mm
//	Foam     old polyurethane, damp: k = 0.028 exp(6 × 0.04) = 0.0356; 38.1 mm is 1.070, 12.7 mm 0.357 m²K/W
//	                    area     1/h + t/k + 1/h          = R        U       UA       U·t
//	  top               0.2323   0.1639 + 0.357 + 0.1639  = 0.685    1.461   0.339    none, under 15 mm
//	  bottom            0.2323   0.1075 + 1.070 + 0.1075  = 1.285    0.778   0.181    0.0297
//	  inboard           0.2581   0.1205 + 1.070 + 0.1205  = 1.311    0.763   0.197    0.0291
//	  outboard, sea     0.2581   0.1205 + 1.070 + 0.002   = 1.193    0.838   0.216    0.0319
//	  fore              0.2323   as inboard                                  0.177    0.0291
//	  aft, engine       0.2323   as inboard                                  0.177    0.0291
//	                                                                sum      1.288
//	Edges    top ring     0.54 × (0.508 × (0.0153 + 0.0168) + 2 × 0.457 × 0.0145)     = 0.016
//	         bottom ring  0.54 × (0.508 × (0.0293 + 0.0309) + 2 × 0.457 × 0.0294)     = 0.031
//	         uprights     0.54 × 0.508 × 2 × (0.0291 + 0.0306)                        = 0.033    0.080
//	Corners  4 × 0.15 × 0.0296 × 0.0381 + 4 × 0.15 × 0.0199 × 0.0296                  = 0.001
//	Seal     rests: 0.35 × 2 × (12 + 16) in = 0.35 × 1.422                            = 0.498
//	Drain    open                                                                     = 0.150
//	Drawn    1.288 + 0.080 + 0.001 + 0.498 + 0.150                                    = 2.017 W/K
//	  sea    outboard 0.216 + half its edges 0.0299/2 + its share of corners         = 0.231
//	  engine aft 0.177 + half its edges 0.0268/2 + its share of corners              = 0.191
//	  cabin  the rest                                                                 = 1.595
//
//	Remembered: 20 lb = 9.07 kg lasted 30 h in July, in use. Cabin 18.1 + 2 = 20.1 °C, half the range
//	4.85 K, sea 16.5 °C; outside (1.595 + 0.191) × 20.1 + 0.231 × 16.5, over 2.017 = 19.7 °C; food 4.44 °C.
//	  heat taken up     9.07 × 342.0                                                  = 3102 kJ
//	  empty box         0.15 kJ/K·L × 118 × (20.1 - 4.44)                             =  277 kJ
//	  use               (goods 0.751 + openings 0.067) × 3.6 × 30                     =   88 kJ
//	  UA                (3102 - 277 - 88) / 3.6 / 30 / (19.7 - 4.44)                  = 1.66 W/K
//	Together  exp((16 ln 2.017 + 11.1 ln 1.66) / 27.1)                                = 1.86 W/K
//	          all parts × 1.86/2.017 = 0.922: top 0.313, bottom 0.167, inboard 0.182, outboard 0.199,
//	          fore and aft 0.163, seal 0.459, drain 0.138, edges and corners 0.0744
//
//	Cabin    18.7 + 2 = 20.7 °C; half the range 4.95 K; 7 to 21 h 23.2 °C, 12 to 18 h 25.2 °C; food 40 °F = 4.44 °C
//	Leak     0.922 × (1.595 × 16.26 + 0.231 × (17.8 - 4.44) + 0.191 × (16.26 + 8 × 1 h/24))
//	         = 0.922 × (25.93 + 3.09 + 3.17)                                          = 29.7 W
//	Openings w 11.7 g/kg of moist air = 0.01184; 53.5 - 17.5 = 36.0 kJ/kg; 0.856 m³/kg;
//	         free air 0.5 × (118 - 39.3) = 39.3 L; 12 × 0.3 × 0.0393/0.856 × 36.0/86.4 = 0.069 W
//	Goods    2 × 3.3 lb × 0.3 = 0.898 kg/d; 0.898 × 3.6 × (25.2 - 4.44)/86.4          = 0.777 W
//	Gain                                                                              = 30.54 W
//	Ice      86.4 × 30.54/342.0                                                       = 7.72 kg/d
//	         a load 118/3 × 0.56 = 22.0 kg, gone in 2.9 days
//
//	Small unit, told by 0.4 A at 12 V and "boxes to 3.5 cu ft" = 99.1 L, fins, thin plate.
//	A maker's box: cube of 0.463 m, U 1/(t/0.024 + 0.241), seal 0.08 × 4 × 0.8 × 0.463:
//	  UA 0.655 in 60 mm of foam, 0.547 in 80 mm, 0.436 in 120 mm.
//	Cooling: the unit holds 5.5 °C there in hot air, running part of the day
//	    foam   air   run    heat   plate    factor           W at -10/45
//	    80     32    0.5    29.0   -0.3     exp × fall 1.46  19.9
//	    60     32    0.5    34.7   -1.4     1.39             25.0     ln +0.23
//	    120    32    0.5    23.1   +0.9     1.54             15.0        -0.28
//	    80     27    0.5    23.5   +0.8     1.60             14.7        -0.30
//	    80     38    0.5    35.6   -1.6     1.31             27.2        +0.31
//	    80     32    0.3    48.3   -4.2     1.23             39.3        +0.68
//	    80     32    0.8    18.1   +1.9     1.61             11.2        -0.57
//	  width √(0.23² + 0.31² + 0.68²) + √(0.28² + 0.30² + 0.57²) = 1.49; usual units 25, 45, 80 W: ln 3.2 = 1.16
//	  weights 1/1.49² = 0.450, 1/1.16² = 0.739: exp((0.450 ln 19.9 + 0.739 ln 45)/1.189) = 33.0 W (20.9 to 52.2)
//	Efficiency: 0.4 × 12 - 0.1 = 4.7 W in 21 °C (18 to 25)
//	    foam   air   W      heat   plate   Carnot   heat/4.7/Carnot
//	    80     21    33.0   8.48   -3.6    6.04     0.299
//	    60, 120                                     0.359, 0.238
//	    18, 25 °C                                   0.225, 0.409
//	    20.9, 52.2 W                                0.278, 0.325
//	  width 0.744 against ln(0.42/0.26) = 0.480, weights 1.81 and 4.35
//	  exp((1.81 ln 0.299 + 4.35 ln 0.33)/6.16)                                        = 0.320
//	At work  Tc 20.7 + 20 = 40.7; 33.0 × (1 + 0.008 × 4.3) = 34.1
//	         Te -4.4: compressor 34.1 exp(0.045 × 5.6) = 43.9, plate 5 × 8.84 = 44.2: 44.1 W
//	         COP 0.320 × 268.75/45.1 = 1.91; 44.1/1.91 = 23.1 W; gain beside a 4 L plate 30.57, runs 30.57/44.1 = 0.693
//	         24 × (0.693 × 23.1 + 0.1)                                                = 387 Wh/d
//	Larger   100 W, fan: Tc 32.7; 109.8; Te -13.9: 92.1 and 91.7: 91.9 W; COP 0.33 × 259.25/46.6 = 1.84
//	         91.9/1.84 + 3 = 52.9 W; runs 0.333; 24 × (0.333 × 52.9 + 0.1)            = 425 Wh/d
//	Sun      15 August, 44.07° N: declination 0.239, sunset 1.809 rad; a 0.755, b 0.332; hours from noon
//	         0.1247 0.1155 0.0983 0.0758 0.0512 0.0274 0.0070; 2 × sum of squares 0.0954
//	         5.21 kWh × 0.0954 = 497 W/m² on the mean kWh, air 21.3, cells 21.3 + 43 × 497/800 = 48.0: 0.908
//	         30 × 5.21 × 0.75 × 0.80 × 0.94 × 0.908                                   = 80.0 Wh/d
//
//	Money, 10 years, 60 nights. A trip of 3 nights has no stop: its ice is its first load, 20 a year.
//	A load is all she can carry, for the box would take more: 40 lb = 18.14 kg, four bags of 4.536 kg.
//	Food aboard 0.898 × 3/2 = 1.347 kg.
//	  ice     20 × 18.14 = 362.9 kg × 0.50/0.4536 = 1.102                             = 400.0
//	          errands 20 × 4 = 80; spoiled 1.347 × 57.8 warm days (run) × 0.80 = 62.3
//	          400.0 + 80 + 62.3                                                       = 542.3 a year
//	          × 8.5302                                                                = 4626
//	  dry     2 × 60 × 1.60 = 192 a year                                              = 1638
//	  small   first 1000 + 120 + 70                                                   = 1190
//	          20 + shore 3.61 × 0.35 + engine 7.82 × 1.50 + wear 13.82 × 0.73 + 1.347 × 50.5 × 0.80 (run)
//	          = 20 + 1.26 + 11.73 + 10.09 + 54.4                                      =  97.5 a year
//	          1190 + 97.5 × 8.5302 = 2022; /8.5302                                    = 237 a year
//	  larger  first 2600 + 500 + 70                                                   = 3170
//	          65 + 4.44 × 0.35 + 7.85 × 1.50 + 15.57 × 0.73 + 1.347 × 52.35 × 0.80 (run) = 146.1 a year
//	          3170 + 146.1 × 8.5302 = 4416; /8.5302                                   = 518 a year
//	Even     ice 542.3/60 = 9.04 a night; small (97.5 - 20)/60 = 1.29, whatever the nights 237 - 77.5 = 159.5:
//	         159.5/(9.04 - 1.29)                                                      = 20.6 nights
//	         larger (146.1 - 65)/60 = 1.35, whatever the nights 518 - 81.1 = 436.9:
//	         436.9/(9.04 - 1.35)                                                      = 56.8 nights
func TestDunlinByHand(t *testing.T) {
	sheet := figuresOf(t, "dunlin")
	holdToPage(t, sheet, []handRow{
		{"box/volume_l", 118.0},
		{"box/ua_drawn_w_per_k", 2.017},
		{"box/evidence/ice history/ua_w_per_k", 1.66},
		{"box/ua_w_per_k", 1.86},
		{"box/heat_by_source/top, with the lid/ua_w_per_k", 0.313},
		{"box/heat_by_source/bottom/ua_w_per_k", 0.167},
		{"box/heat_by_source/inboard wall/ua_w_per_k", 0.182},
		{"box/heat_by_source/outboard wall/ua_w_per_k", 0.199},
		{"box/heat_by_source/fore wall/ua_w_per_k", 0.163},
		{"box/heat_by_source/aft wall/ua_w_per_k", 0.163},
		{"box/heat_by_source/lid seal/ua_w_per_k", 0.459},
		{"box/heat_by_source/drain/ua_w_per_k", 0.138},
		{"box/heat_by_source/edges and corners/ua_w_per_k", 0.0744},
		{"box/heat_by_source_month", 8},
		{"months/8/cabin_c", 20.7},
		{"months/8/leak_w", 29.7},
		{"months/8/openings_w", 0.069},
		{"months/8/goods_w", 0.777},
		{"months/8/heat_gain_w", 30.5},
		{"months/8/ice_kg_per_day", 7.72},
		{"box/ice_capacity_kg", 22.0},
		{"months/8/solar_wh_per_day", 80.0},
		{"unit_figures/small/rated_cooling_w", 33.0},
		{"unit_figures/small/eta", 0.320},
		{"unit_figures/small/condenser_c", 40.7},
		{"unit_figures/small/plate_c", -4.4},
		{"unit_figures/small/capacity_w", 44.1},
		{"unit_figures/small/cop", 1.91},
		{"unit_figures/small/run_share", 0.693},
		{"months/8/small_wh_per_day", 387},
		{"unit_figures/larger/condenser_c", 32.7},
		{"unit_figures/larger/plate_c", -13.9},
		{"unit_figures/larger/capacity_w", 91.9},
		{"unit_figures/larger/cop", 1.84},
		{"unit_figures/larger/run_share", 0.333},
		{"months/8/larger_wh_per_day", 425},

		{"options/ice/as_told/first_cost", 0},
		{"options/ice/as_told/season/ice_bought_kg_per_year", 362.9},
		{"options/ice/as_told/season/ice_errands_per_year", 20},
		{"options/ice/as_told/per_year", 542.3},
		{"options/ice/as_told/present_cost", 4626},
		{"options/ice/as_told/yearly_equivalent", 542.3},
		{"options/dry/as_told/per_year", 192},
		{"options/dry/as_told/present_cost", 1638},
		{"options/small/as_told/first_cost", 1190},
		{"options/small/as_told/per_year", 97.5},
		{"options/small/as_told/present_cost", 2022},
		{"options/small/as_told/yearly_equivalent", 237},
		{"options/larger/as_told/first_cost", 3170},
		{"options/larger/as_told/per_year", 146.1},
		{"options/larger/as_told/present_cost", 4416},
		{"options/larger/as_told/yearly_equivalent", 518},
		{"break_even/small/nights_per_year", 20.6},
		{"break_even/larger/nights_per_year", 56.8},
	})
}
