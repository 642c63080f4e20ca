package weltwright.trace.capture;

import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.camera.lens.CalibratedLens;
import weltwright.knife.ThicknessProfile;
import weltwright.trace.ground.GroundChoice;
import weltwright.units.PrintScale;

/**
 * The user's settings for the trace of a photo.
 *
 * @param handleThicknessMm greatest thickness of the handle across the flats, by caliper
 * @param spineThicknessMm thickness of the blade at the spine by the heel, by caliper
 * @param tipDropMm how much lower the tip's mid-plane lies than the heel's; mostly 0
 * @param focal35mm focal length in 35 mm terms; empty to take it from Exif or from the ground in perspective
 * @param sheetScale measured length of the sheet's two bars over their nominal length
 * @param ground choice of ground
 * @param phone calibrated lens, without its camera's name, which must not get into a job; {@code focal35mm} takes
 *     precedence
 * @param thickness thicknesses measured elsewhere along the knife
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

    /** Creates settings without a calibrated lens and without further thicknesses. */
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

    /** Creates settings for a knife on the printed reference sheet. */
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

    /** Returns the settings for another photo on the same ground, without positions in this photo. */
    public TraceSettings elsewhere() {
        return withGround(ground.elsewhere());
    }

    public TraceSettings withThickness(ThicknessProfile other) {
        return new TraceSettings(
                handleThicknessMm, spineThicknessMm, tipDropMm, focal35mm, sheetScale, ground, phone, other);
    }
}
