package weltwright.wording;

import static weltwright.wording.Messages.text;

import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;

/** Words the advice on a photo: what makes it hard to trace, and how to take a better one. */
public final class PhotoWording {
    /** Length of the example knife in the sentence on a photo from too near. */
    private static final double EXAMPLE_KNIFE_MM = 200;

    /** Error of half the handle's thickness in that example. */
    private static final double EXAMPLE_HEIGHT_ERROR_MM = 0.5;

    private static final SentencesByType<PhotoAdvice> ADVICE = new SentencesByType<PhotoAdvice>()
            .add(
                    PhotoAdvice.TooNear.class,
                    a -> findingAndRemedy(
                            "photo.too-near",
                            a.distanceMm(),
                            EXAMPLE_HEIGHT_ERROR_MM * EXAMPLE_KNIFE_MM / a.distanceMm(),
                            a.enoughMm()))
            .add(PhotoAdvice.TooSlanted.class, a -> findingAndRemedy("photo.too-slanted", a.degrees()))
            .add(PhotoAdvice.Blurred.class, a -> findingAndRemedy("photo.blurred", a.smearPx(), a.smearMm()))
            .add(
                    PhotoAdvice.BlurredAtUnknownScale.class,
                    a -> findingAndRemedy("photo.blurred-at-unknown-scale", a.smearPx()))
            .add(PhotoAdvice.TooDark.class, a -> findingAndRemedy("photo.too-dark", a.whiteLevel()))
            .add(PhotoAdvice.Overexposed.class, a -> findingAndRemedy("photo.overexposed", 100 * a.burntPart()))
            .add(PhotoAdvice.Hazy.class, a -> findingAndRemedy("photo.hazy", a.blackLevel(), a.whiteLevel()))
            .add(PhotoAdvice.FaintPrint.class, a -> findingAndRemedy("photo.faint-print", 100 * a.contrast()))
            .add(PhotoAdvice.GroundHidden.class, a -> findingAndRemedy("photo.ground-hidden", a.seen(), a.all()))
            .add(PhotoAdvice.KnifeReachesOver.class, a -> findingAndRemedy("photo.knife-reaches-over"))
            .add(PhotoAdvice.TooCoarse.class, a -> findingAndRemedy("photo.too-coarse", a.pxPerMm()))
            .add(
                    PhotoAdvice.LensContradicted.class,
                    a -> findingAndRemedy(
                            "photo.lens-contradicted", PhotoWording.KNOWN_LENSES.of(a.told()), a.seen35mm()))
            .add(PhotoAdvice.CutOut.class, a -> findingAndRemedy("photo.cut-out"))
            .add(
                    PhotoAdvice.PartDamaged.class,
                    a -> findingAndRemedy("photo.part-damaged", Math.max(1, 100 * a.part())))
            .add(PhotoAdvice.DamagedSomewhere.class, a -> findingAndRemedy("photo.damaged-somewhere"));

    /** Clauses within the sentence of {@code photo.lens-contradicted}. */
    private static final SentencesByType<LensSource> KNOWN_LENSES = new SentencesByType<LensSource>()
            .add(LensSource.GroundAlone.class, s -> text("lens.ground-alone.told"))
            .add(LensSource.Typed.class, s -> text("lens.typed.told", s.focal35mm()))
            .add(LensSource.PictureData.class, s -> text("lens.picture-data.told", s.focal35mm()))
            .add(LensSource.Phone.class, s -> text("lens.phone.told", s.name(), s.focal35mm()));

    private PhotoWording() {}

    /** The advice in two sentences: what was found, and what to do. */
    public static String sentences(PhotoAdvice advice) {
        return ADVICE.of(advice);
    }

    private static String findingAndRemedy(String key, Object... values) {
        return text(key + ".seen", values) + " " + text(key + ".remedy", values);
    }
}
