package weltwright.output.cutter;

/** A side of a piece of leather. */
public enum LeatherSide {
    /** The smooth side, which shows. */
    GRAIN,
    /** The rough side, which lies inside. */
    FLESH;

    /** The name for display: "grain side". */
    public String words() {
        return this == GRAIN ? "grain side" : "flesh side";
    }
}
