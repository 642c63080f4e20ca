package weltwright.sheath.spec;

/**
 * The choice of what is done for a guard that the sheath would have to take in.
 *
 * <p>A guard slides to the throat as the knife is drawn, so whatever lets it through is open from the throat down past
 * the guard. A slot with leather sewn above it would lock the knife in; one that is open to the throat is an open side.
 */
public enum GuardOpening {
    /** The sheath ends before the guard; one that would have to take it in is refused. */
    NONE,
    /**
     * From the throat down past the guard the sheath is not sewn where the guard stands out; a strap holds the knife.
     */
    OPEN_SIDE
}
