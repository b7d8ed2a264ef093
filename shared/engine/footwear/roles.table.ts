/**
 * What a pair of each role is worn on and what sole it may have; common practice, no source: studs
 * and flat football soles for the game, a lugged trail trainer for training too, running shoes for
 * roads.
 */
import { type PairRole, type Sole, type Surface, surfaces } from '../visit/terms.ts'

export interface RoleRow {
	/** Grounds that belong to the role, of those played on. */
	surfaces: readonly Surface[]
	soles: readonly Sole[]
	/** Toe room and inside length are those of boots or of trainers. */
	band: 'boot' | 'trainer'
	/** Where no ground is recorded. */
	usual?: Sole
}
const pitch: readonly Surface[] = surfaces.filter((surface) => surface !== 'road')
export const roleRows: Readonly<Record<PairRole, RoleRow>> = {
	match: {
		surfaces: pitch,
		soles: ['firm-ground', 'artificial-ground', 'soft-ground', 'turf', 'indoor'],
		band: 'boot',
	},
	training: {
		surfaces: pitch,
		soles: ['firm-ground', 'artificial-ground', 'soft-ground', 'turf', 'indoor', 'trail'],
		band: 'boot',
	},
	running: { surfaces: ['road'], soles: ['road', 'trail'], band: 'trainer', usual: 'road' },
	everyday: { surfaces: [], soles: ['road', 'trail'], band: 'trainer' },
}
