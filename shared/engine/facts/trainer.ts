/** Which pairs are trainers: they have limits of their own for toe room and for heel raises. */

/** Whether a pair, planned pair or model of the shelf is a trainer and not a boot, by its sole. */
export const isTrainer = ({ sole }: { sole?: string | undefined }): boolean =>
	sole === 'road' || sole === 'trail'
