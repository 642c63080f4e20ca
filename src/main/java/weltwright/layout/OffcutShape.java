package weltwright.layout;

/** How what is left of stock after a cut is made into one useful piece. */
public enum OffcutShape {
    /** All beyond a straight cut across the stock at the used length. */
    STRAIGHT,
    /** The largest rectangle along the direction of least stretch without a piece or a flaw in it. */
    RECTANGLE,
    /** The largest part round the pieces, without its necks and slivers. */
    OUTLINE
}
