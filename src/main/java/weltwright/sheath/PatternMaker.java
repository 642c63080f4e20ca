package weltwright.sheath;

import weltwright.knife.Knife;

/** A knife and the maker's choices to a pattern. */
public final class PatternMaker {
    private PatternMaker() {}

    /** Throws {@link weltwright.trouble.Trouble} where no sheath can be made so, saying which choice to change. */
    public static Pattern make(Knife knife, SheathSpec spec) {
        throw new UnsupportedOperationException();
    }
}
