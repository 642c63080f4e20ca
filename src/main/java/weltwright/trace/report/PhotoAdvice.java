package weltwright.trace.report;

/**
 * An advice on a photo: a property that makes its trace worse or impossible, with its measures. Its sentences, with how
 * to take a better photo, are made where it is shown.
 */
public sealed interface PhotoAdvice {

    /** Returns its subject. */
    Matter matter();

    /** The subjects of advice. */
    enum Matter {
        /** The camera was so near that the error of the knife's height matters. */
        TOO_NEAR,
        /** The view was too oblique. */
        TOO_SLANTED,
        BLURRED,
        TOO_DARK,
        /** Parts are overexposed to plain white. */
        OVEREXPOSED,
        /** The photo or the ground's print has little contrast. */
        LOW_CONTRAST,
        /** Many of the ground's control points are hidden or outside of the photo. */
        GROUND_HIDDEN,
        /** The knife, or what was taken for it, reaches beyond the ground or the photo. */
        KNIFE_REACHES_OVER,
        /** The resolution on the ground is low. */
        TOO_COARSE,
        /** The ground contradicts the prior of the lens. */
        LENS_CONTRADICTED,
        /** The photo is cropped: its middle is not the principal point. */
        CUT_OUT,
        /** A part of the file's data is damaged. */
        DAMAGED
    }

    /**
     * The camera was too near.
     *
     * @param distanceMm of the camera from the ground
     * @param enoughMm distance from which the error of the knife's height matters little
     */
    record TooNear(double distanceMm, double enoughMm) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.TOO_NEAR;
        }
    }

    /**
     * The view was too oblique.
     *
     * @param degrees angle of the line of sight to the ground's middle from the vertical
     */
    record TooSlanted(double degrees) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.TOO_SLANTED;
        }
    }

    /**
     * The picture is blurred or shaken.
     *
     * @param smearPx width from 10 % to 90 % of an edge on the ground, in pixels
     * @param smearMm the same in mm
     */
    record Blurred(double smearPx, double smearMm) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.BLURRED;
        }
    }

    /**
     * The picture is blurred or shaken, and its scale is unknown.
     *
     * @param smearPx width from 10 % to 90 % of an edge
     */
    record BlurredAtUnknownScale(double smearPx) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.BLURRED;
        }
    }

    /**
     * The picture is too dark.
     *
     * @param whiteLevel its lightest grey level, of 255
     */
    record TooDark(double whiteLevel) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.TOO_DARK;
        }
    }

    /**
     * Too much of the picture is plain white.
     *
     * @param burntPart the part that is plain white, 0 to 1
     */
    record Overexposed(double burntPart) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.OVEREXPOSED;
        }
    }

    /**
     * The picture has little contrast.
     *
     * @param blackLevel its darkest grey level, of 255
     * @param whiteLevel its lightest grey level
     */
    record Hazy(double blackLevel, double whiteLevel) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.LOW_CONTRAST;
        }
    }

    /**
     * The print of the ground has little contrast.
     *
     * @param contrast of the print relative to what is beside it, 0 to 1
     */
    record FaintPrint(double contrast) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.LOW_CONTRAST;
        }
    }

    /**
     * Too much of the ground is hidden or outside of the picture.
     *
     * @param seen number of the ground's control points that were found
     * @param all number of its control points
     */
    record GroundHidden(int seen, int all) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.GROUND_HIDDEN;
        }
    }

    /** The knife runs out of the picture. */
    record KnifeReachesOver() implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.KNIFE_REACHES_OVER;
        }
    }

    record TooCoarse(double pxPerMm) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.TOO_COARSE;
        }
    }

    /**
     * The ground contradicts the prior of the lens.
     *
     * @param told source of the prior, which was left out
     * @param seen35mm focal length measured by the ground, in 35 mm terms
     */
    record LensContradicted(LensSource told, double seen35mm) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.LENS_CONTRADICTED;
        }
    }

    /** The photo is a part of a larger one. */
    record CutOut() implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.CUT_OUT;
        }
    }

    /**
     * A part of the file's data is damaged.
     *
     * @param part the part of the picture that is unknown by it, 0 to 1
     */
    record PartDamaged(double part) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.DAMAGED;
        }
    }

    /** The file is damaged at an unknown place. */
    record DamagedSomewhere() implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.DAMAGED;
        }
    }
}
