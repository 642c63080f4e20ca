package weltwright.trace.capture;

import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.camera.lens.CalibratedLens;
import weltwright.knife.ThicknessProfile;
import weltwright.trace.ground.GroundChoice;
import weltwright.units.PrintScale;

/**
 * What the user tells about a photo.
 *
 * @param handleThicknessMm greatest thickness of the handle across the flats, by caliper
 * @param spineThicknessMm thickness of the blade at the spine by the heel, by caliper
 * @param tipDropMm how much lower the tip's mid-plane lies than the heel's; mostly 0
 * @param focal35mm typed focal length in 35 mm terms; empty to take it from Exif or from the picture's tilt
 * @param sheetScale what the sheet's two bars measure, over their nominal length
 * @param ground what the knife lies on
 * @param phone the lens that took it, where it was measured before, without its camera's name, which is nobody's
 *     business who gets a job; a typed focal length comes before it
 * @param thickness what was measured of the knife's thickness elsewhere along it
 */
public record TraceSettings(
        double handleThicknessMm,
        double spineThicknessMm,
        double tipDropMm,
        OptionalDouble focal35mm,
        PrintScale sheetScale,
        GroundChoice ground,
        Optional<CalibratedLens> phone,
        ThicknessProfile thickness) {

    public TraceSettings {
        phone = phone.map(CalibratedLens::withoutCamera);
    }

    /** With a lens of which no more is known than the photo tells. */
    public TraceSettings(
            double handleThicknessMm,
            double spineThicknessMm,
            double tipDropMm,
            OptionalDouble focal35mm,
            PrintScale sheetScale,
            GroundChoice ground) {
        this(
                handleThicknessMm,
                spineThicknessMm,
                tipDropMm,
                focal35mm,
                sheetScale,
                ground,
                Optional.empty(),
                ThicknessProfile.NONE);
    }

    /** On the printed reference sheet. */
    public TraceSettings(
            double handleThicknessMm,
            double spineThicknessMm,
            double tipDropMm,
            OptionalDouble focal35mm,
            PrintScale sheetScale) {
        this(handleThicknessMm, spineThicknessMm, tipDropMm, focal35mm, sheetScale, new GroundChoice.Sheet());
    }

    public TraceSettings withGround(GroundChoice other) {
        return new TraceSettings(
                handleThicknessMm, spineThicknessMm, tipDropMm, focal35mm, sheetScale, other, phone, thickness);
    }

    public TraceSettings withPhone(Optional<CalibratedLens> other) {
        return new TraceSettings(
                handleThicknessMm, spineThicknessMm, tipDropMm, focal35mm, sheetScale, ground, other, thickness);
    }

    /** The same for another photo on the same ground: corners that were set by hand are places in this one. */
    public TraceSettings elsewhere() {
        return withGround(ground.elsewhere());
    }

    public TraceSettings withThickness(ThicknessProfile other) {
        return new TraceSettings(
                handleThicknessMm, spineThicknessMm, tipDropMm, focal35mm, sheetScale, ground, phone, other);
    }
}
