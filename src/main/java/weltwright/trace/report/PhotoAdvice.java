package weltwright.trace.report;

/**
 * Something about a photo that makes its trace worse, or impossible, as data: what it is, with its measures. It is
 * worded where it is shown, together with how to take a better photo.
 */
public sealed interface PhotoAdvice {

    /** What it is about. */
    Matter matter();

    /** What there can be to say of a photo. */
    enum Matter {
        /** The camera was so near that the height of the knife counts for much. */
        TOO_NEAR,
        /** It looked from aside. */
        TOO_SLANTED,
        /** The picture is not sharp. */
        BLURRED,
        TOO_DARK,
        /** Parts of it are as white as can be, and show nothing. */
        OVEREXPOSED,
        /** The ground's print hardly shows. */
        LOW_CONTRAST,
        /** Much of the ground's reference points is hidden or out of the picture. */
        GROUND_HIDDEN,
        /** The knife, or what was taken for it, reaches beyond the ground or the picture. */
        KNIFE_REACHES_OVER,
        /** A pixel covers much. */
        TOO_COARSE,
        /** What was told of the lens is not what the ground shows. */
        LENS_CONTRADICTED,
        /** The picture's middle is not where the lens looked: it is a part of a larger one. */
        CUT_OUT,
        /** A part of its file's data is damaged. */
        DAMAGED
    }

    /**
     * The camera was too near.
     *
     * @param distanceMm of the camera from the ground
     * @param enoughMm from where on the height of the knife counts for little
     */
    record TooNear(double distanceMm, double enoughMm) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.TOO_NEAR;
        }
    }

    /**
     * The camera looked down too much at a slant.
     *
     * @param degrees of the line of sight to the ground's middle, from straight down
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
     * @param smearPx, smearMm over what width an edge on the ground rises from a tenth to nine tenths
     */
    record Blurred(double smearPx, double smearMm) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.BLURRED;
        }
    }

    /**
     * The picture is blurred or shaken, and its scale is not known.
     *
     * @param smearPx over what width an edge rises from a tenth to nine tenths, where the scale is not known
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
     * @param whiteLevel the lightest that it shows, of 255
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
     * @param burntPart how much of the picture is plain white, 0 to 1
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
     * @param blackLevel, whiteLevel the darkest and the lightest that it shows, of 255
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
     * @param contrast by how much the ground's print differs from what is beside it, 0 to 1
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
     * @param seen how many of the ground's {@code all} reference points were found
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
     * What was told of the lens is not what the ground shows.
     *
     * @param told what was told of the lens, and left out
     * @param seen35mm the focal length that the ground shows, in 35 mm terms
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
     * @param part how much of the picture the file's damage leaves unknown, 0 to 1
     */
    record PartDamaged(double part) implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.DAMAGED;
        }
    }

    /** The file is damaged, and where does not show. */
    record DamagedSomewhere() implements PhotoAdvice {
        @Override
        public Matter matter() {
            return Matter.DAMAGED;
        }
    }
}
