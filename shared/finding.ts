/** What the engine says: always a finding with its reasons and basis, never loose text. */
export type FindingSide = 'left' | 'right' | 'both' | 'none'
export type Topic = 'sizing' | 'ankle' | 'posture' | 'growth' | 'screening' | 'footwear' | 'loading' | 'insert' | 'season' | 'measure'
export type Level = 'note' | 'advise' | 'caution' | 'stop'
export type Strength = 'standard' | 'guideline' | 'trial' | 'cohort' | 'cross-sectional' | 'expert' | 'practice' | 'clinic'
/** The number or fact a finding rests on. */
export interface Because { measure: string; value: number | string; unit?: string }
/** The rule, the threshold row of the protocol (by its key) and its source. */
export interface Basis { rule: string; threshold?: string; source: string; strength: Strength }
export interface Finding {
	/** Stable id: topic.rule or topic.rule.side */
	id: string
	topic: Topic
	side: FindingSide
	level: Level
	/** Plain sentence for clinician, player and guardian alike. */
	says: string
	because: Because[]
	basis: Basis
}
