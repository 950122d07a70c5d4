import { Injectable } from '@nestjs/common';
import type { BuildSheet } from '../rules/facts/build-sheet.js';
import { toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import { type FactTable, factHistory, findFact, withdrawFact } from './fact-table.js';
import { Prisma } from './generated/client.js';
import { jsonList } from './json-rows.js';
import { newId } from './new-id.js';
import { type HistoryOf, type New, type Recorded, recordedColumns } from './recorded.js';

const AXLE = Prisma.sql`json_build_object(
  'number', build_axle.number,
  'gawrKg', build_axle.gawr_kg,
  'ratingKg', build_axle.rating_kg,
  'fromCouplerM', build_axle.from_coupler_m,
  'springRateNPerM', build_axle.spring_rate_n_per_m,
  'trackM', build_axle.track_m,
  'brakes', build_axle.brakes,
  'lubricant', build_axle.lubricant,
  'wheelsPerSide', build_axle.wheels_per_side)`;

const BUILD = Prisma.sql`json_build_object(
  'id', build_sheet.id,
  'effectiveFrom', build_sheet.effective_from,
  'body', build_sheet.body,
  'plate', json_build_object(
    'gvwrKg', build_sheet.gvwr_kg,
    'coldPressureKpa', build_sheet.plate_cold_pressure_kpa),
  'empty', json_build_object(
    'massKg', build_sheet.empty_mass_kg,
    'basis', build_sheet.empty_mass_basis,
    'tongueN', build_sheet.empty_tongue_n),
  'axles', ${jsonList(
    AXLE,
    Prisma.sql`from build_axle where build_axle.build_sheet_id = build_sheet.id`,
    Prisma.sql`build_axle.number`,
  )},
  'suspension', build_sheet.suspension,
  'hitch', json_build_object(
    'kind', build_sheet.hitch_kind,
    'couplerRatingKg', build_sheet.coupler_rating_kg,
    'couplerTongueN', build_sheet.coupler_tongue_n,
    'ballSizeM', build_sheet.ball_size_m,
    'heightAdjustable', build_sheet.hitch_height_adjustable,
    'levelHeightM', build_sheet.hitch_level_height_m,
    'chainBreakKg', build_sheet.chain_break_kg,
    'breakaway', build_sheet.breakaway),
  'deck', json_build_object(
    'material', build_sheet.deck_material,
    'lengthM', build_sheet.deck_length_m,
    'widthM', build_sheet.deck_width_m,
    'heightM', build_sheet.deck_height_m,
    'tiltLengthM', build_sheet.tilt_length_m,
    'tiltDrive', build_sheet.tilt_drive,
    'pivotFromCouplerM', build_sheet.deck_pivot_from_coupler_m,
    'frontFromCouplerM', build_sheet.deck_front_from_coupler_m,
    'plankThicknessM', build_sheet.plank_thickness_m,
    'plankWidthM', build_sheet.plank_width_m,
    'crossmemberSpacingM', build_sheet.crossmember_spacing_m,
    'boardCount', build_sheet.deck_board_count,
    'wood', build_sheet.deck_wood,
    'woodGrade', build_sheet.deck_wood_grade,
    'treated', build_sheet.deck_treated),
  'frame', json_build_object(
    'section', build_sheet.frame_section,
    'depthM', build_sheet.frame_depth_m,
    'tongue', build_sheet.tongue,
    'bedDepthM', build_sheet.bed_depth_m),
  'rear', json_build_object(
    'dovetailM', build_sheet.dovetail_m,
    'ramps', build_sheet.ramps,
    'rampLengthM', build_sheet.ramp_length_m,
    'rampRatingKg', build_sheet.ramp_rating_kg,
    'stabilizers', build_sheet.stabilizers),
  'fenders', json_build_object(
    'kind', build_sheet.fenders,
    'clearWidthM', build_sheet.fender_clear_width_m),
  'jacks', json_build_object(
    'count', build_sheet.jack_count,
    'liftKg', build_sheet.jack_lift_kg,
    'supportKg', build_sheet.jack_support_kg,
    'fromCouplerM', build_sheet.jack_from_coupler_m),
  'wheels', json_build_object(
    'boltPattern', build_sheet.bolt_pattern,
    'nutTorqueNm', build_sheet.nut_torque_nm))`;

export const BUILDS: FactTable<BuildSheet> = {
  table: 'build_sheet',
  shape: BUILD,
  order: Prisma.sql`build_sheet.effective_from, build_sheet.id`,
  needed: ['effective_from'],
};

/** Versions of the build sheet. */
@Injectable()
export class BuildStore {
  /** Returns the id of the new version. */
  async insert(tx: YardTx, trailerId: string, build: New<BuildSheet>, recorded: Recorded): Promise<string> {
    const id = build.id ?? newId();
    await tx.buildSheet.createMany({
      data: [{ id, yardId: tx.yardId, trailerId, ...columns(build), ...recordedColumns(recorded) }],
    });
    await tx.buildAxle.createMany({
      data: build.axles.map((axle) => ({
        yardId: tx.yardId,
        buildSheetId: id,
        number: axle.number,
        gawrKg: axle.gawrKg,
        ratingKg: axle.ratingKg,
        fromCouplerM: axle.fromCouplerM,
        springRateNPerM: axle.springRateNPerM,
        trackM: axle.trackM,
        brakes: axle.brakes,
        lubricant: axle.lubricant,
        wheelsPerSide: axle.wheelsPerSide,
      })),
    });
    return id;
  }

  /** The version with this id, if it stands. */
  async find(tx: YardTx, trailerId: string, buildId: string): Promise<BuildSheet | null> {
    return findFact(tx, BUILDS, trailerId, buildId);
  }

  /** Says that a version never was. */
  async withdraw(tx: YardTx, trailerId: string, buildId: string, recorded: Recorded): Promise<void> {
    await withdrawFact(tx, BUILDS, trailerId, buildId, recorded);
  }

  async history(tx: YardTx, trailerId: string): Promise<readonly HistoryOf<BuildSheet>[]> {
    return factHistory(tx, BUILDS, trailerId);
  }
}

function columns(build: New<BuildSheet>) {
  return {
    effectiveFrom: toColumn(build.effectiveFrom),
    body: build.body,
    gvwrKg: build.plate.gvwrKg,
    plateColdPressureKpa: build.plate.coldPressureKpa,
    emptyMassKg: build.empty.massKg,
    emptyMassBasis: build.empty.basis,
    emptyTongueN: build.empty.tongueN,
    suspension: build.suspension,
    hitchKind: build.hitch.kind,
    couplerRatingKg: build.hitch.couplerRatingKg,
    couplerTongueN: build.hitch.couplerTongueN,
    ballSizeM: build.hitch.ballSizeM,
    hitchHeightAdjustable: build.hitch.heightAdjustable,
    hitchLevelHeightM: build.hitch.levelHeightM,
    chainBreakKg: build.hitch.chainBreakKg,
    breakaway: build.hitch.breakaway,
    deckMaterial: build.deck.material,
    deckLengthM: build.deck.lengthM,
    deckWidthM: build.deck.widthM,
    deckHeightM: build.deck.heightM,
    tiltLengthM: build.deck.tiltLengthM,
    tiltDrive: build.deck.tiltDrive,
    deckPivotFromCouplerM: build.deck.pivotFromCouplerM,
    deckFrontFromCouplerM: build.deck.frontFromCouplerM,
    plankThicknessM: build.deck.plankThicknessM,
    plankWidthM: build.deck.plankWidthM,
    crossmemberSpacingM: build.deck.crossmemberSpacingM,
    deckBoardCount: build.deck.boardCount,
    deckWood: build.deck.wood,
    deckWoodGrade: build.deck.woodGrade,
    deckTreated: build.deck.treated,
    frameSection: build.frame.section,
    frameDepthM: build.frame.depthM,
    tongue: build.frame.tongue,
    bedDepthM: build.frame.bedDepthM,
    dovetailM: build.rear.dovetailM,
    ramps: build.rear.ramps,
    rampLengthM: build.rear.rampLengthM,
    rampRatingKg: build.rear.rampRatingKg,
    stabilizers: build.rear.stabilizers,
    fenders: build.fenders.kind,
    fenderClearWidthM: build.fenders.clearWidthM,
    jackCount: build.jacks.count,
    jackLiftKg: build.jacks.liftKg,
    jackSupportKg: build.jacks.supportKg,
    jackFromCouplerM: build.jacks.fromCouplerM,
    boltPattern: build.wheels.boltPattern,
    nutTorqueNm: build.wheels.nutTorqueNm,
  };
}
