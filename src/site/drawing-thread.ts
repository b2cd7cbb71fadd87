import { parentPort } from 'node:worker_threads'
import { drawDiagram } from './draw-diagram.ts'
import type { Answered, Asked } from './drawing-team.ts'

/** The other end of a drawing thread: draws what it is sent, one after the other. */
const answered = (svg: Promise<string>): Promise<Answered> => svg.then((drawn) => ({ svg: drawn }), (why: unknown) => ({ why }))

parentPort?.on('message', ({ source, name }: Asked) => void answered(drawDiagram(source, name)).then((answer) => parentPort?.postMessage(answer)))
parentPort?.postMessage('ready')
