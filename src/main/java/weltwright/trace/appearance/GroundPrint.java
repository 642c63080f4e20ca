package weltwright.trace.appearance;

/** The kind of print at a point of a ground. Its edges may be mistaken for the knife's. */
public enum GroundPrint {
    NONE(0),
    LINE(1),
    BLACK(2);

    private final int code;

    GroundPrint(int code) {
        this.code = code;
    }

    /** Its value in a raster of bytes. */
    int code() {
        return code;
    }

    static GroundPrint ofCode(int code) {
        return switch (code) {
            case 0 -> NONE;
            case 1 -> LINE;
            case 2 -> BLACK;
            default -> throw new IllegalArgumentException("No print has the code " + code);
        };
    }
}
