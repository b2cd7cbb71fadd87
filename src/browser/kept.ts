import { isMissing } from '../quantity/outcome.ts'
import { BODY, kept } from './keep.ts'

/** Says on the section it stands in, before what is below is drawn, that this device keeps a body: its numbers have their room from the start. */
const body = kept(BODY)
const section = document.currentScript?.parentElement
if (section && !isMissing(body) && body.value !== undefined) section.dataset.kept = 'body'
