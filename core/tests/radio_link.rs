//! Radio links against published values, and against values worked out on another road
//! by tests/reference/radio_link.py: each case in data/radio_link.json names its source.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod radio_link_cases;
mod support;

use radio_link_cases::worked_link;
use serde_json::Value;
use support::{assert_near, tolerance};
use tinwave_core::radio_link as link;
use tinwave_core::radio_link::{
    BuildingMaterial, ChannelWidth, CoaxLine, CoaxType, Coding, Connector, Emitter, End,
    ExposureStandard, LinkChange, Obstacle, OlderRate, PathClearance, PathProfile, Polarisation,
    ReceiveStation, Reflection, Sense, Wall, WoodlandSet,
};

/// The inputs of a case.
struct Inputs<'a>(&'a [Value]);

impl Inputs<'_> {
    fn number(&self, n: usize) -> f64 {
        self.0[n].as_f64().expect("a number")
    }

    fn place(&self, n: usize) -> usize {
        let place = self.0[n].as_u64().expect("a place in a list");
        usize::try_from(place).expect("small")
    }

    fn word(&self, n: usize) -> &str {
        self.0[n].as_str().expect("a word")
    }

    fn material(&self, n: usize) -> BuildingMaterial {
        BuildingMaterial::from_key(self.word(n)).expect("a material")
    }

    fn wall(&self, n: usize) -> Wall {
        Wall {
            material: self.material(n),
            thickness_m: self.number(n + 1),
        }
    }

    fn coax(&self, n: usize) -> CoaxType {
        CoaxType::from_key(self.word(n)).expect("a cable")
    }

    fn polarisation(&self, n: usize) -> Polarisation {
        let sense = if self.number(n + 1) > 0.0 {
            Sense::RightHand
        } else {
            Sense::LeftHand
        };
        let tilt_rad = self.number(n + 2).to_radians();
        match self.0[n].as_f64() {
            None => Polarisation::Linear { tilt_rad },
            Some(0.0) => Polarisation::Circular { sense },
            Some(axial_ratio_db) => Polarisation::Elliptic {
                axial_ratio_db,
                sense,
                tilt_rad,
            },
        }
    }

    fn station(&self) -> ReceiveStation {
        ReceiveStation {
            gain_dbi: self.number(0),
            antenna_temperature_k: self.number(1),
            line_loss_db: self.number(2),
            line_temperature_k: self.number(3),
            noise_figure_db: self.number(4),
        }
    }

    fn clearance(&self) -> PathClearance {
        let profile = PathProfile {
            distance_m: self.number(0),
            height_a_m: self.number(1),
            height_b_m: self.number(2),
            frequency_hz: self.number(3),
            earth_factor: self.number(4),
        };
        let obstacles: Vec<Obstacle> = self.0[5]
            .as_array()
            .expect("obstacles")
            .iter()
            .map(|pair| Obstacle {
                distance_m: pair[0].as_f64().expect("a distance"),
                height_m: pair[1].as_f64().expect("a height"),
            })
            .collect();
        PathClearance::new(&profile, &obstacles).expect("in range")
    }

    fn reflection(&self, n: usize) -> Reflection {
        [Reflection::None, Reflection::Ground, Reflection::Complete][self.place(n)]
    }

    fn end(&self, n: usize) -> End {
        [End::A, End::B][self.place(n)]
    }
}

/// The worth of a change to the worked link, named in short.
fn worth(word: &str) -> f64 {
    let change = match word {
        "halve" => LinkChange::HalveDistance,
        "aim" => LinkChange::Aim(End::A),
        "polarisation" => LinkChange::MatchPolarisation,
        "trees" => LinkChange::AvoidFoliage,
        "wall" => LinkChange::AvoidWall(0),
        "line" => LinkChange::RemoveLine(End::A),
        other => panic!("no change {other}"),
    };
    let savings = worked_link().what_buys_most().expect("in range");
    let found = savings.iter().find(|saving| saving.change == change);
    found.expect("listed").gained_db
}

fn waves_and_walls(quantity: &str, x: &Inputs) -> Option<f64> {
    let (a, b) = (0, 1);
    Some(match quantity {
        "free_space_loss_db" => link::free_space_loss_db(x.number(a), x.number(b)),
        "wavelength_m" => link::wavelength_m(x.number(a)),
        "free_space_distance_m" => link::free_space_distance_m(x.number(a), x.number(b)),
        "BuildingMaterial::relative_permittivity" => x
            .material(a)
            .relative_permittivity(x.number(b))
            .expect("in range"),
        "BuildingMaterial::conductivity_s_per_m" => x
            .material(a)
            .conductivity_s_per_m(x.number(b))
            .expect("in range"),
        "Wall::loss_db" => x.wall(a).loss_db(x.number(2)).expect("in range"),
        "Wall::averaged_loss_db" => x.wall(a).averaged_loss_db(x.number(2)).expect("in range"),
        "weissberger_loss_db" => {
            link::weissberger_loss_db(x.number(a), x.number(b)).expect("in range")
        }
        "early_itu_loss_db" => link::early_itu_loss_db(x.number(a), x.number(b)).expect("in range"),
        "WoodlandSet::maximum_attenuation_db" => {
            WoodlandSet::ALL[x.place(a)].maximum_attenuation_db(x.number(b))
        }
        "woodland_loss_db" => link::woodland_loss_db(x.number(a), x.number(b), x.number(2)),
        "specific_attenuation_db_per_m" => {
            let three = link::specific_attenuation_db_per_m(x.number(a)).expect("in range");
            three[x.place(b)]
        }
        "foliage_loss" => {
            let span = link::foliage_loss(x.number(a), x.number(b)).expect("in range");
            assert!(span.low_db <= span.usual_db && span.usual_db <= span.high_db);
            span.usual_db
        }
        _ => return None,
    })
}

fn lines_and_antennas(quantity: &str, x: &Inputs) -> Option<f64> {
    Some(match quantity {
        "CoaxType::attenuation_db_per_m" => x
            .coax(0)
            .attenuation_db_per_m(x.number(1))
            .expect("in range"),
        "CoaxLine::loss_db" => {
            let line = CoaxLine {
                coax: x.coax(0),
                length_m: x.number(1),
            };
            line.loss_db(x.number(2)).expect("in range")
        }
        "Connector::pair_loss_db" => {
            let family = Connector::ALL[x.place(0)];
            family.pair_loss_db(x.number(1)).expect("in range")
        }
        "polarisation_efficiency" => {
            link::polarisation_efficiency(x.polarisation(0), x.polarisation(3))
        }
        "polarisation_loss_db" => link::polarisation_loss_db(x.polarisation(0), x.polarisation(3)),
        "practical_polarisation_loss_db" => {
            link::practical_polarisation_loss_db(x.polarisation(0), x.polarisation(3))
        }
        "pointing_loss_db" => link::pointing_loss_db(x.number(0), x.number(1)),
        "error_for_loss_rad" => link::error_for_loss_rad(x.number(0), x.number(1)),
        "degrees_per_mm" => link::degrees_per_mm(x.number(0)),
        "turn_of_lever_rad" => link::turn_of_lever_rad(x.number(0), x.number(1)),
        "sideways_of_turn_m" => link::sideways_of_turn_m(x.number(0), x.number(1)),
        "spot_width_m" => link::spot_width_m(x.number(0), x.number(1)),
        _ => return None,
    })
}

fn receivers(quantity: &str, x: &Inputs) -> Option<f64> {
    Some(match quantity {
        "Coding::minimum_sensitivity_dbm" => {
            Coding::ALL[x.place(0)].minimum_sensitivity_dbm(ChannelWidth::ALL[x.place(1)])
        }
        "Coding::data_rate_mbps" => {
            Coding::ALL[x.place(0)].data_rate_mbps(ChannelWidth::ALL[x.place(1)])
        }
        "OlderRate::minimum_sensitivity_dbm" => {
            OlderRate::ALL[x.place(0)].minimum_sensitivity_dbm()
        }
        "OlderRate::data_rate_mbps" => OlderRate::ALL[x.place(0)].data_rate_mbps(),
        "thermal_noise_dbm" => link::thermal_noise_dbm(x.number(0), x.number(1)),
        "sensitivity_from_noise_dbm" => {
            link::sensitivity_from_noise_dbm(x.number(0), x.number(1), x.number(2))
        }
        "ReceiveStation::system_temperature_k" => x.station().system_temperature_k(),
        "ReceiveStation::g_over_t_db_per_k" => x.station().g_over_t_db_per_k(),
        "ReceiveStation::carrier_to_noise_db" => {
            x.station()
                .carrier_to_noise_db(x.number(5), x.number(6), x.number(7))
        }
        _ => return None,
    })
}

fn paths(quantity: &str, x: &Inputs) -> Option<f64> {
    Some(match quantity {
        "knife_edge_loss_db" | "knife_edge_loss_db integral" => {
            link::knife_edge_loss_db(x.number(0))
        }
        "diffraction_parameter" => {
            link::diffraction_parameter(x.number(0), x.number(1), x.number(2), x.number(3))
        }
        "fresnel_radius_m" | "fresnel_radius_m ellipsoid" => {
            let n = u32::try_from(x.place(0)).expect("small");
            link::fresnel_radius_m(n, x.number(1), x.number(2), x.number(3))
        }
        "earth_bulge_m" => link::earth_bulge_m(x.number(0), x.number(1), x.number(2)),
        "PathClearance::new ground" => x.clearance().ground.ratio,
        "PathClearance::new raise" => x.clearance().raise_both_m,
        "PathClearance::new obstacle" => x.clearance().obstacles[x.place(6)].ratio,
        "equal_heights_over_flat_ground_m" => {
            link::equal_heights_over_flat_ground_m(x.number(0), x.number(1), x.number(2))
        }
        _ => return None,
    })
}

fn people_and_budgets(quantity: &str, x: &Inputs) -> Option<f64> {
    Some(match quantity {
        "ExposureStandard::limit_w_m2" => {
            let standard = ExposureStandard::ALL[x.place(0)];
            standard.limit_w_m2(x.number(1)).expect("in range")
        }
        "far_field_distance_m" => {
            link::far_field_distance_m(x.number(0), x.number(1), x.reflection(2))
        }
        "power_density_w_m2" => link::power_density_w_m2(x.number(0), x.number(1), x.reflection(2)),
        "safe_distance" => {
            let emitter = Emitter {
                power_w: x.number(0),
                gain_dbi: x.number(1),
                aperture_diameter_m: x.number(2),
                frequency_hz: x.number(3),
            };
            let standard = ExposureStandard::ALL[x.place(4)];
            let safe = link::safe_distance(&emitter, standard, x.reflection(5));
            safe.expect("in range").distance_m
        }
        "Link::budget" => {
            let budget = worked_link().budget(x.end(0)).expect("in range");
            budget.expect("sends").received_dbm
        }
        "Link::reach_m" => {
            let reach = worked_link()
                .reach_m(x.end(0), x.number(1))
                .expect("in range");
            reach.expect("sends")
        }
        "Link::what_buys_most" => worth(x.word(0)),
        _ => return None,
    })
}

#[test]
fn worked_values() {
    let text = include_str!("data/radio_link.json");
    let data: Value = serde_json::from_str(text).expect("sound");
    let cases = data["cases"].as_array().expect("cases");
    for case in cases {
        let full = case["quantity"].as_str().expect("a name");
        let quantity = full.trim_start_matches("radio_link::");
        let x = Inputs(case["inputs"].as_array().expect("inputs"));
        let got = [
            waves_and_walls,
            lines_and_antennas,
            receivers,
            paths,
            people_and_budgets,
        ]
        .iter()
        .find_map(|values| values(quantity, &x))
        .unwrap_or_else(|| panic!("no way to evaluate {full}"));
        let wanted = case["value"].as_f64().expect("a number");
        let most = tolerance(full, "radio_link::worked_values");
        // Cables differ by a share of their loss.
        let (got, wanted) = if full.contains("CoaxType") {
            (got / wanted, 1.0)
        } else {
            (got, wanted)
        };
        assert_near(&format!("{full} {}", case["inputs"]), got, wanted, most);
        assert!(!case["source"].as_str().expect("a source").is_empty());
    }
    assert!(cases.len() > 300, "{}", cases.len());
}
