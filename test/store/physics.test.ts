import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Database } from '../../src/store/database.js';
import { type FreshDatabase, freshDatabase } from '../support/database.js';
import { aYard, fillYard } from './sample-yard.js';

let fresh: FreshDatabase;
let owner: pg.Client;

beforeAll(async () => {
  fresh = await freshDatabase();
  const database = new Database(fresh.url);
  await fillYard(database, await aYard(fresh.url, database, 'Physics'));
  await database.onModuleDestroy();
  owner = new pg.Client(fresh.url);
  await owner.connect();
});

afterAll(async () => {
  await owner.end();
  await fresh.drop();
});

/** What comes of changing the one row of a table, past all rights; undone afterwards. */
async function changing(table: string, set: string): Promise<string> {
  await owner.query('begin');
  try {
    const { rowCount } = await owner.query(`update "${table}" set ${set}`);
    return rowCount === 0 ? 'no row to change' : 'taken';
  } catch (error) {
    if (error instanceof pg.DatabaseError && error.code === '23514') return `refused by ${error.constraint}`;
    throw error;
  } finally {
    await owner.query('rollback');
  }
}

describe('what no trailer can be is refused, whoever writes it', () => {
  test.each([
    ['build_sheet', 'gvwr_kg = -1', 'build_sheet_masses_check'],
    ['build_sheet', 'gvwr_kg = 0', 'build_sheet_masses_check'],
    ['build_sheet', "gvwr_kg = 'NaN'", 'build_sheet_masses_check'],
    ['build_sheet', "empty_mass_kg = 'Infinity'", 'build_sheet_masses_check'],
    ['build_sheet', 'coupler_rating_kg = -0.5', 'build_sheet_masses_check'],
    ['build_sheet', 'plate_cold_pressure_kpa = 0', 'build_sheet_plate_cold_pressure_kpa_check'],
    ['build_sheet', 'coupler_tongue_n = -1', 'build_sheet_tongue_forces_check'],
    ['build_sheet', 'ball_size_m = 2.3125', 'build_sheet_ball_size_m_check'],
    ['build_sheet', 'deck_length_m = -6', 'build_sheet_lengths_check'],
    ['build_sheet', 'plank_thickness_m = 1.5', 'build_sheet_lengths_check'],
    ['build_sheet', 'tilt_length_m = 20, deck_length_m = 6', 'build_sheet_tilt_inside_deck_check'],
    ['build_sheet', 'jack_count = -1', 'build_sheet_jack_count_check'],
    ['build_sheet', 'nut_torque_nm = 0', 'build_sheet_nut_torque_nm_check'],
    ['build_sheet', "body = 'flatbed'", 'build_sheet_body_check'],
    ['build_sheet', "suspension = 'springs'", 'build_sheet_suspension_check'],
    ['build_sheet', "hitch_kind = 'ball'", 'build_sheet_hitch_kind_check'],
    ['build_sheet', "empty_mass_basis = 'guessed'", 'build_sheet_empty_mass_basis_check'],
    ['build_sheet', 'withdrawn = true', 'build_sheet_withdrawn_check'],
    ['build_axle', 'wheels_per_side = 3', 'build_axle_wheels_per_side_check'],
    ['build_axle', 'wheels_per_side = 0', 'build_axle_wheels_per_side_check'],
    ['build_axle', 'gawr_kg = -3175', 'build_axle_ratings_check'],
    ['build_axle', 'from_coupler_m = 0', 'build_axle_from_coupler_m_check'],
    ['build_axle', "brakes = 'disc'", 'build_axle_brakes_check'],
    ['build_axle', 'number = 0', 'build_axle_number_check'],
    ['part', "removed_on = '2001-01-01'", 'part_removed_after_fitted_check'],
    ['part', 'load_index_single = 280', 'part_load_index_check'],
    ['part', 'max_load_single_kg = -1', 'part_max_load_check'],
    ['part', "kind = 'axle'", 'part_kind_check'],
    ['part', "kind = 'deck'", 'part_only_tires_have_marks_check'],
    ['part', "position = 'left front'", 'part_position_check'],
    ['part', 'cost_cents = -1', 'part_cost_cents_check'],
    ['machine', 'mass_kg = 0', 'machine_mass_kg_check'],
    ['machine', 'width_m = -2', 'machine_size_check'],
    ['machine', 'replaces_machine_id = id', 'machine_replaces_another_check'],
    ['tow_vehicle', 'gcwr_kg = -1', 'tow_vehicle_masses_check'],
    ['trip', 'ended_on = started_on - 1', 'trip_ended_after_started_check'],
    ['trip', 'distance_km = -0.1', 'trip_distance_km_check'],
    ['trip', "distance_km = 'NaN'", 'trip_distance_km_check'],
    ['trip', 'scale_gross_kg = 0', 'trip_scale_gross_kg_check'],
    ['trip', "scale_axle_n = '{1000,-1}'", 'trip_scale_axle_n_check'],
    ['trip', "scale_axle_n = '{1000,NaN}'", 'trip_scale_axle_n_check'],
    ['trip', "scale_axle_n = '{1000,null}'", 'trip_scale_axle_n_check'],
    ['trip', "roads = '{sand}'", 'trip_roads_check'],
    ['trip', "roads = '{salt}', roads_known = false", 'trip_roads_check'],
    ['trip', "door = 'window'", 'trip_door_check'],
    ['trip_cargo', 'mass_kg = -1', 'trip_cargo_mass_kg_check'],
    ['trip_cargo', "remedy = 'pray'", 'trip_cargo_remedy_check'],
    ['meter_reading', 'shown_km = -1', 'meter_reading_shown_km_check'],
    ['meter_reading', 'meter_span_km = 0', 'meter_reading_meter_span_km_check'],
    ['job', 'ends_on = starts_on - 1', 'job_ends_after_start_check'],
    ['job', 'distance_km = -5', 'job_distance_km_check'],
    ['job', "driver_name = null, driver_cdl = 'A'", 'job_driver_cdl_check'],
    ['job_cargo', "mass_kg = 'Infinity'", 'job_cargo_mass_kg_check'],
    ['check_kind', 'lead_days = -1', 'check_kind_lead_days_check'],
    ['check_kind', "triggers = '{}'", 'check_kind_lists_check'],
    ['check_record', "outcome = 'maybe'", 'check_record_outcome_check'],
    ['checked_line', 'value = -300', 'checked_line_value_check'],
    ['checked_line', "quantity = 'tread-depth-mm', value = -1", 'checked_line_value_check'],
    ['checked_line', 'value = null', 'checked_line_value_check'],
    ['hold', "lifted_on = '2001-01-01', lifted_by_name = 'Ines'", 'hold_lifted_after_opened_check'],
    ['hold', "lifted_on = '2031-01-01'", 'hold_lifted_by_somebody_check'],
    ['hold', "lift_reason = 'looks fine'", 'hold_lifted_by_somebody_check'],
    ['trailer', "yard_number = ' '", 'trailer_yard_number_check'],
    ['trailer', "status = 'lost'", 'trailer_status_check'],
    ['trailer_result', 'wake_on = as_of', 'trailer_result_wake_on_check'],
    ['yard', 'weigh_first_share = 1.01', 'yard_weigh_first_share_check'],
    ['yard', 'weigh_first_share = -0.01', 'yard_weigh_first_share_check'],
    ['yard', 'tire_age_limit_years = 0', 'yard_tire_age_limit_years_check'],
    ['yard', 'plan_hour = 24', 'yard_hours_check'],
    ['membership', "role = 'boss'", 'membership_role_check'],
    ['build_sheet', "deck_wood = 'balsa'", 'build_sheet_deck_wood_check'],
    ['build_sheet', "deck_wood_grade = 'best'", 'build_sheet_deck_wood_grade_check'],
    ['build_sheet', 'deck_board_count = 0', 'build_sheet_deck_board_count_check'],
    ['build_sheet', 'hitch_level_height_m = 0', 'build_sheet_places_check'],
    ['build_sheet', 'deck_pivot_from_coupler_m = -1', 'build_sheet_places_check'],
    ['build_sheet', "ramp_length_m = 'NaN'", 'build_sheet_places_check'],
    ['build_sheet', 'jack_from_coupler_m = -0.1', 'build_sheet_places_check'],
    ['build_sheet', 'ramp_rating_kg = 0', 'build_sheet_ramp_rating_kg_check'],
    ['build_axle', 'spring_rate_n_per_m = 0', 'build_axle_spring_rate_n_per_m_check'],
    ['build_axle', 'track_m = -2', 'build_axle_track_m_check'],
    ['part', "removed_on = '2031-01-01', removed_for = 'tired'", 'part_removed_for_check'],
    ['part', "removed_for = 'worn-out'", 'part_removed_for_needs_day_check'],
    ['part', "speed_symbol = 'A9'", 'part_speed_symbol_check'],
    ['part', "bearing_inner = '25580'", 'part_bearings_check'],
    ['machine', 'contact_count = 0', 'machine_contact_size_check'],
    ['machine', 'contact_width_m = 0', 'machine_contact_size_check'],
    ['machine', 'clearance_m = -0.1', 'machine_contact_size_check'],
    ['tow_vehicle', 'ball_height_m = 0', 'tow_vehicle_ball_height_m_check'],
    ['trip', 'hitch_height_m = -1', 'trip_hitch_height_m_check'],
    ['trip', 'off_centre_m = 5.5', 'trip_off_centre_m_check'],
    ['trip', "tie_downs = 'null'", 'trip_tie_downs_check'],
    ['trip', `tie_downs = '{"count": 4}'`, 'trip_tie_downs_check'],
    ['trip', `tie_downs = '[{"count": -1, "way": "direct", "workingLoadKg": null}]'`, 'trip_tie_downs_check'],
    ['trip', `tie_downs = '[{"count": 2, "way": "under", "workingLoadKg": null}]'`, 'trip_tie_downs_check'],
    ['job', `tie_downs = '[{"count": 2, "way": "over", "workingLoadKg": 0}]'`, 'job_tie_downs_check'],
    ['job', `tie_downs = '[{"count": "two", "way": "over", "workingLoadKg": 900}]'`, 'job_tie_downs_check'],
    ['trip_cargo', "from_coupler_m = 'Infinity'", 'trip_cargo_from_coupler_m_check'],
    ['job_cargo', 'from_coupler_m = -11', 'job_cargo_from_coupler_m_check'],
    ['checked_line', "quantity = 'magnet-inches'", 'checked_line_quantity_check'],
    ['handover', "way = 'sideways', hitch = null", 'handover_way_check'],
    ['handover', "way = 'back'", 'handover_back_ends_a_way_out_check'],
    ['handover', "customer = ' '", 'handover_names_check'],
    ['handover', "seen = '{}'", 'handover_seen_check'],
    ['handover', `seen = '[{"thing": "wings", "condition": "sound"}]'`, 'handover_seen_check'],
    ['handover', `seen = '[{"thing": "ramp", "condition": "fine"}]'`, 'handover_seen_check'],
    ['handover', `seen = '[{"thing": "ramp", "condition": "bent", "tire": {}}]'`, 'handover_seen_check'],
    ['handover', `seen = '[{"thing": "customer-ball", "condition": "sound", "ballSizeM": 2}]'`, 'handover_seen_check'],
    ['handover', `hitch = '{"plug": "lamps-only"}'`, 'handover_hitch_check'],
    ['handover', `hitch = '{"ball": {}, "plug": "half"}'`, 'handover_hitch_check'],
    ['handover', `signed_strokes = '[[1, 2]]'`, 'handover_signed_strokes_check'],
    ['handover', `signed_strokes = '"Ada"'`, 'handover_signed_strokes_check'],
    ['handover', 'withdrawn = true', 'handover_withdrawn_check'],
    ['handover_photo', 'place = -1', 'handover_photo_place_check'],
    ['handover_photo', "media_type = 'text/html'", 'handover_photo_media_type_check'],
    ['trailer_result', "deck_lives = '{}'", 'trailer_result_deck_lives_check'],
    ['yard', 'decay_index = -1', 'yard_decay_index_check'],
    ['yard', 'deck_life_years = 0', 'yard_deck_life_years_check'],
  ])('%s: %s', async (table, set, constraint) => {
    expect(await changing(table, set)).toBe(`refused by ${constraint}`);
  });
});

describe('what looks odd but can be is taken', () => {
  test.each([
    ['an empty trailer that lifts its tongue', 'build_sheet', 'empty_tongue_n = -120'],
    ['a load that lifts the hitch', 'trip', 'scale_tongue_n = -300'],
    ['a trip of no distance', 'trip', 'distance_km = 0'],
    ['cargo of no weight', 'trip_cargo', 'mass_kg = 0'],
    ['a job that ends on the day it starts', 'job', 'ends_on = starts_on'],
    ['a hub in the cold', 'checked_line', "quantity = 'temperature-c', value = -40"],
    ['a yard that sets no share aside', 'yard', 'weigh_first_share = 0'],
    ['a load that nothing ties down', 'trip', "tie_downs = '[]'"],
    ['a load on the left', 'trip', 'off_centre_m = -0.3'],
    ['a magnet without current', 'checked_line', "quantity = 'magnet-a', value = 0"],
    ['a deck in the desert', 'yard', 'decay_index = 0'],
    [
      'a thing nobody says more of',
      'handover',
      `seen = '[{"thing": "deck", "condition": "sound", "position": null, "tire": null, "ballSizeM": null}]'`,
    ],
    ['a hitch of which nothing was read', 'handover', `hitch = '{"ball": {}, "swappedTo": null, "plug": null}'`],
    ['the largest lunette ring', 'build_sheet', 'ball_size_m = 0.1016'],
  ])('%s', async (_, table, set) => {
    expect(await changing(table, set)).toBe('taken');
  });
});

test('a yard in a time zone that does not exist is refused, for its day could not be told', async () => {
  const moved = owner.query("update yard set time_zone = 'America/Nowhere'");
  await expect(moved).rejects.toThrow('time zone "America/Nowhere" not recognized');
});
