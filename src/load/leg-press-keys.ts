/** What a picture of a squat, a split squat, a step-up or a heel raise asks beside its load. */
import type { Asked, Keys } from './model.ts'

/** What only the picture asks: how deep, on what, how far apart. The load does not depend on it. */
export const poseKeys = {
  rise: { choices: ['knees', 'heels'], optional: true, says: 'what straightens: the knees in a squat or a step-up, or the ankles in a heel raise; knees unless given' },
  knee_deg: { unit: 'deg', min: 45, max: 175, optional: true, says: 'angle of the working knee at the lowest point, 180 being straight; 90 unless a box, a mat or the floor says where the way down ends' },
  seat_height_cm: { unit: 'cm', min: 15, max: 90, optional: true, says: 'height of the box that the hips touch' },
  foot_height_cm: { unit: 'cm', min: 0, max: 100, optional: true, says: 'height of the box under the working foot; the floor unless given' },
  rear_foot_height_cm: { unit: 'cm', min: 0, max: 60, optional: true, says: 'height of the box under the rear foot; the floor unless given' },
  stance_cm: { unit: 'cm', min: -30, max: 120, optional: true, says: 'front heel to rear toes, or to the rear heel where that carries, below 0 where the toes are ahead of that heel; 80 in a split stance, 20 in a step-up and side by side in a heel raise unless given' },
  other_foot: { choices: ['toes', 'heel'], optional: true, says: 'what the other foot of a split stance or a step-up stands on; toes unless given' },
  bar_height_cm: { unit: 'cm', min: 60, max: 140, optional: true, says: 'heel raise: height of the bar the hands press on in place of the other foot' },
  added_mass_at: { choices: ['chest', 'hands', 'back'], optional: true, says: 'where the added mass is held; at the chest unless given' },
} as const satisfies Keys

/** What is asked for the picture, with what it has to fit. */
export type AskedPicture = Asked<typeof poseKeys> & { readonly stance: 'two legs' | 'split' | 'step-up' | 'one leg'; readonly front_leg_percent: number; readonly added_mass_percent: number }

/** What of the picture does not fit the stance, as a phrase after "not computed:". */
export function unfitPose({ stance, rise, added_mass_percent, ...input }: AskedPicture): string | undefined {
  const given = (names: readonly (keyof typeof poseKeys)[]) => names.find((name) => ({ ...input })[name as keyof typeof input] !== undefined)
  const isShared = stance === 'split' || stance === 'step-up'
  const apart = isShared ? undefined : given(['rear_foot_height_cm', 'stance_cm', 'other_foot'])
  if (apart) return `${apart} is given, but the stance is ${stance}, not split`
  const barred = rise === 'heels' && isShared ? undefined : given(['bar_height_cm'])
  if (barred) return `${barred} is given, but no hands help a heel raise here`
  if (input.bar_height_cm !== undefined && (input.stance_cm !== undefined || input.other_foot !== undefined)) return 'bar_height_cm is given, so the other foot is off the ground'
  if (input.stance_cm !== undefined && input.stance_cm < 0 && rise !== 'heels') return `stance_cm is ${input.stance_cm}, but only in a heel raise the rear toes stand ahead of the front heel`
  const deep = rise === 'heels' ? given(['knee_deg', 'seat_height_cm', 'rear_foot_height_cm']) : undefined
  if (deep) return `${deep} is given, but the heels rise and the knees stay straight`
  return input.added_mass_at !== undefined && added_mass_percent === 0 ? 'added_mass_at is given, but no mass is added' : undefined
}
