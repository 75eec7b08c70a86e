/**
 * The cautions that belong where the work happens. Facts from published burn and splint-care guidance; for licensed therapists, whose
 * judgement and local rules come first.
 */
export const cautionsEnglish = {
  heat: 'Water at 60 C burns deeply in seconds: blot, wait, test on your own skin first; take more care with reduced sensation, thin skin, fresh scar and children.',
  skin: 'First wear about 20 minutes, then look at the skin: redness still there after 15 to 20 minutes means adjust.',
  contraindications:
    "Not for a hard end-feel, an unstable fracture, or an unprotected tendon or ligament repair without the surgeon's protocol. Swelling changes the fit: measure again.",
  evidence: 'Evidence for exercise use is thin: this is a starting point, the clinician decides.',
  laser: 'Never laser a sheet that contains PVC or whose safety sheet does not allow it. Knife or scissors are the default.',
  model:
    'The pattern comes from measurements and a model: cut, drape, let cool, check full PIP motion in both directions, remake if it does not do its work.',
  licensed: 'For licensed therapists; local rules and the treating clinician come first.',
};

/** The check before making a strip. J Hand Ther, March 2023. */
export const pencilTestEnglish =
  'Pencil test: weave a pencil over and under the fingers as the strip would run, and see whether active PIP motion improves. If it does not, think again before making one (J Hand Ther, March 2023).';
