package weltwright.units;

/** A unit of length in which users give sizes. */
public enum LengthUnit {
    MILLIMETRE(1),
    CENTIMETRE(10),
    /** 25.4 mm exactly, by the international yard and pound agreement of 1959. */
    INCH(25.4),
    /** An ounce of leather, 1/64 in of thickness. Common practice. */
    OUNCE(25.4 / 64);

    private final double inMm;

    LengthUnit(double inMm) {
        this.inMm = inMm;
    }

    /** The length of one unit in mm. */
    public double inMm() {
        return inMm;
    }
}
