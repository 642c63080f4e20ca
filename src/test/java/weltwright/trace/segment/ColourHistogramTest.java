package weltwright.trace.segment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ColourHistogramTest {
    /** A kernel density estimate keeps the weight of what it was made from (Parzen 1962). */
    @Test
    void theDensityAddsUpToTheWeightOfTheColours() {
        ColourHistogram colours = new ColourHistogram();
        float[] greyAndBrown = {100, 100, 100, 70, 90, 110};
        colours.add(ColourHistogram.bin(greyAndBrown, 0), 3);
        colours.add(ColourHistogram.bin(greyAndBrown, 3), 1);
        double sum = 0;
        ColourHistogram.Density density = colours.density(4);
        for (int bin = 0; bin < ColourHistogram.BINS; bin++) {
            sum += density.at(bin);
        }
        assertThat(sum).isEqualTo(1, within(1e-4));
    }

    /** The peak of a Gaussian in three dimensions is (sigma sqrt(2 pi)) to the power of -3, here of 1.5 bins. */
    @Test
    void aSingleColourHasTheDensityOfAGaussian() {
        ColourHistogram colours = new ColourHistogram();
        float[] brown = {60, 90, 120};
        colours.add(ColourHistogram.bin(brown, 0), 1);
        ColourHistogram.Density density = colours.density(1);
        double peak = Math.pow(1.5 * Math.sqrt(2 * Math.PI), -3);
        assertThat((double) density.at(ColourHistogram.bin(brown, 0))).isEqualTo(peak, within(0.02 * peak));
        float[] threeBinsBrighter = {66, 96, 126};
        double fallen = peak * Math.exp(-0.5 * Math.pow(3 / 1.5, 2));
        assertThat((double) density.at(ColourHistogram.bin(threeBinsBrighter, 0)))
                .isEqualTo(fallen, within(0.02 * peak));
    }

    @Test
    void aDarkerShadeKeepsItsHue() {
        ColourHistogram colours = new ColourHistogram();
        float[] grey = {100, 100, 100};
        colours.add(ColourHistogram.bin(grey, 0, 0.5), 1);
        ColourHistogram.Density density = colours.density(1);
        float[] darker = {50, 50, 50};
        assertThat(density.at(ColourHistogram.bin(darker, 0))).isGreaterThan(0);
        assertThat(density.at(ColourHistogram.bin(grey, 0))).isZero();
    }
}
