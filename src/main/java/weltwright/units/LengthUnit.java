package weltwright.units;

/** A unit that makers give lengths in. */
public enum LengthUnit {
    MILLIMETRE(1),
    CENTIMETRE(10),
    /** 25.4 mm exactly, by the international yard and pound agreement of 1959. */
    INCH(25.4),
    /** An ounce of leather: a sixty-fourth of an inch of thickness. Of leather only. */
    OUNCE(25.4 / 64);

    private final double inMm;

    LengthUnit(double inMm) {
        this.inMm = inMm;
    }

    /** How many mm one of it is. */
    public double inMm() {
        return inMm;
    }
}
