import { figureText } from '../quantity/figure.ts'
import { isMissing } from '../quantity/outcome.ts'
import { fit, fittedKey } from '../load/fit.ts'
import { isNumberKey } from '../load/model.ts'
import { AVERAGE } from '../measure/measure.ts'
import { checkedWorkspace, workspaceOption } from './curriculum.ts'
import { namedRungs } from './named.ts'
import { FORMATS } from './report.ts'
import { EXIT, Misuse, type Verb } from './verb.ts'

/** `rungbook fit`: the geometry that gives a load. */
export const fitVerb: Verb = {
  name: 'fit',
  says: 'finds the set-up of a rung that gives a load',
  usage: 'rungbook fit LADDER/RUNG --share N [--key NAME] [--workspace DIR]',
  examples: ['rungbook fit press-up/bench-hands --share 33', 'rungbook fit row-straps/lean-26 --share 30 --key lean_deg'],
  options: { ...workspaceOption, share: { type: 'string' }, key: { type: 'string' } },

  async run(typed, console) {
    const share = Number(typed.options.share)
    if (typed.options.share === undefined || !Number.isFinite(share)) throw new Misuse('Say which load is wanted, on one working limb: --share 30.')
    const checked = await checkedWorkspace(typed, console)
    const { measured } = checked
    if (!measured) {
      console.note(FORMATS.text(checked, false))
      return EXIT.findings
    }
    const { rungs } = namedRungs(measured, typed.rest, 'rung')
    const [rung] = rungs
    if (!rung) throw new Misuse('Name one rung, such as press-up/floor.')
    const key = typeof typed.options.key === 'string' ? typed.options.key : fittedKey(rung.model, rung.inputs)
    if (key === undefined) throw new Misuse(`Nothing in the set-up of "${rung.id}" can be moved.`)
    const fitted = fit(rung.model, rung.inputs, key, share, AVERAGE)
    if (isMissing(fitted)) {
      console.out(`no such geometry: ${fitted.missing}\n`)
      return EXIT.findings
    }
    const spec = rung.model.keys[key]
    const unit = isMissing(rung.outcome) ? '%' : rung.outcome.quantity.unit
    const said = spec && isNumberKey(spec) ? figureText(fitted.value, spec.unit) : String(fitted.value)
    console.out(`${key}: ${fitted.value.toFixed(1)}\n  ${said}: ${figureText(fitted.load, unit)} on one working limb of an average body\n`)
    return EXIT.fine
  },
}
