import { createDense } from 'ringproof/algebra/dense'
import { engineContract } from './engine.ts'

engineContract('dense', createDense)
