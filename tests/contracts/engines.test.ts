import { createDense } from 'ringproof/algebra/dense'
import { createSparse } from 'ringproof/algebra/sparse'
import { engineContract } from './engine.ts'
import { twinContract } from './twin.ts'

engineContract('dense', createDense)
engineContract('sparse', createSparse)
twinContract('dense', createDense)
twinContract('sparse', createSparse)
