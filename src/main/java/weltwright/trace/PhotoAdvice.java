package weltwright.trace;

/**
 * Something about a photo that makes its trace worse, or impossible, and how to take a better one.
 *
 * @param matter what it is about
 * @param seen what was found, one plain sentence with its measure
 * @param better what to do, one plain sentence
 */
public record PhotoAdvice(Matter matter, String seen, String better) {

    /** What there can be to say of a photo. */
    public enum Matter {
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

    @Override
    public String toString() {
        return seen + " " + better;
    }
}
