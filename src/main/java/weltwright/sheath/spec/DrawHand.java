package weltwright.sheath.spec;

/** The hand that draws the knife, and so the hip that the sheath hangs on. */
public enum DrawHand {
    RIGHT,
    LEFT
}
