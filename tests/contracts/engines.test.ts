import { createDense } from 'ringproof/algebra/dense'
import { createSparse } from 'ringproof/algebra/sparse'
import { engineContract } from './engine.ts'

engineContract('dense', createDense)
engineContract('sparse', createSparse)
