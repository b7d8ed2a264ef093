/** The body as a whole: size, parents, leg length, maturity, joint laxity. */
import { z } from 'zod'
import { choice, count, measure, text, yesNo } from '../fields.ts'

export const bodySchema = z.strictObject({
	statureCm: measure('Stature', 'cm', [70, 240], [100, 215], 1).optional(),
	sittingHeightCm: measure('Sitting height', 'cm', [40, 130], [55, 110], 1).optional(),
	massKg: measure('Body mass', 'kg', [10, 250], [18, 150], 1).optional(),
	motherStatureCm: measure("Mother's stature", 'cm', [120, 220], [140, 195], 1).optional(),
	fatherStatureCm: measure("Father's stature", 'cm', [120, 230], [150, 210], 1).optional(),
	parentStatures: choice('Parent statures', ['reported', 'measured']).optional(),
	growthOrHormoneTreatment: yesNo('Growth disorder, steroid or hormone treatment'),
	legLengthDifferenceMm: measure(
		'Leg-length difference, shorter side',
		'mm',
		[0, 80],
		[0, 25],
	).optional(),
	shorterLeg: choice('Shorter leg', ['left', 'right']).optional(),
	legLengthReason: text('Reason to correct the leg-length difference', 200).optional(),
	legLengthSymptoms: yesNo('Symptoms put down to the leg-length difference'),
	legLengthYears: measure('Years the difference has been there', 'years', [0, 100]).optional(),
	legLengthCompensation: choice('Compensation in the spine', [
		'none',
		'side-bending',
		'bony',
	]).optional(),
	puberty: choice('Maturity', ['before', 'during', 'after']).optional(),
	beighton: count('Beighton score', '/9', [0, 9]).optional(),
	hypermobilityHistory: count('Hypermobility history, yes answers', '/5', [0, 5]).optional(),
})
