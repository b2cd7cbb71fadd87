import { figureText, intervalText } from '../quantity/figure.ts'
import { missing, type Outcome } from '../quantity/outcome.ts'
import { loadModel, type Keys, type Load } from './model.ts'

const keys = {
  percent: { unit: '% of body weight', min: 1, max: 300, says: 'the measured load on the working limbs together' },
  sd_percent: { unit: '% of body weight', min: 0, max: 50, says: 'its standard deviation between people' },
  source: { words: true, says: 'id of the source, from the ladder’s list of sources' },
  condition: { words: true, says: 'what was measured, in words' },
  working_side_percent: { unit: '%', min: 50, max: 100, default: 50, says: 'share that one side takes' },
} as const satisfies Keys

/**
 * A load somebody measured: its mean, and two standard deviations to either side.
 *
 * Shape   mean and SD to the load on one working limb.
 * Units   % of body weight in and out.
 * Missing when two SD below the mean would be negative.
 * Source  named by the ladder, and printed beside the number.
 * Assumes the spread between people is normal: 19 in 20 lie within two SD.
 */
export const published = loadModel({
  name: 'published',
  says: 'a load that was measured and published',
  keys,
  solves: [],
  cites: [{ source: 'mechanics', at: 'mean ± 2 SD' }],
  compute({ percent, sd_percent, source, condition, working_side_percent }): Outcome<Load> {
    const share = working_side_percent / 100
    const [low, high] = [percent - 2 * sd_percent, percent + 2 * sd_percent]
    if (low < 0) return missing('two standard deviations below the mean is less than nothing, so the spread is not as declared')
    return {
      quantity: { name: 'force on one working hand', unit: '% of body weight', repeats: true },
      load: { mid: percent * share, points: [low * share, high * share], over: `measured: ${source}` },
      figures: [{ name: 'force on the working limbs together', value: { mid: percent, points: [low, high], over: `measured: ${source}` }, unit: '% of body weight' }],
      poses: [],
      working: [
        {
          says: `Measured: ${condition} (${source})`,
          formula: 'mean ± 2 SD',
          numbers: `${figureText(percent, '% of body weight')} ± 2 × ${figureText(sd_percent, '% of body weight')}: ${intervalText({ low, high }, '% of body weight')}`,
        },
      ],
      assumes: ['The people measured were like the athlete in build; laboratories differ by 5 to 10 % of body weight.'],
      cautions: [],
    }
  },
})
