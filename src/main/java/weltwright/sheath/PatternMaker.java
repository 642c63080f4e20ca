package weltwright.sheath;

import java.util.List;
import weltwright.fit.Cavity;
import weltwright.fit.DrawCheck;
import weltwright.knife.Knife;

/**
 * A knife and the maker's choices to a pattern.
 *
 * <ol>
 *   <li>{@link Cavity}: the room that the knife needs to be drawn.
 *   <li>{@link Planform}: cavity, stitch row and outer edge in the knife's plane, where the welt lies.
 *   <li>{@link Development}: body, or face and back, wrapped over the knife's sections and laid flat.
 *   <li>{@link SheathDraft}: the pieces, their holes and marks, and the seams that join them.
 * </ol>
 *
 * The same knife and choices give the same pattern to the last bit.
 */
public final class PatternMaker {
    private PatternMaker() {}

    /** Throws {@link weltwright.trouble.Trouble} where no sheath can be made so, saying which choice to change. */
    public static Pattern make(Knife knife, SheathSpec spec) {
        Choices.check(knife, spec);
        int layers = weltLayers(knife, spec);
        double weltMm = layers * spec.leatherThicknessMm();
        Cavity cavity = new Cavity(knife, knife.landmarks().heel().x() - spec.handleDepthMm(), spec.easeMm());
        Planform form = new Planform(cavity, spec, weltMm);
        Development leather = new Development(form, cavity, spec.neutralFactor() * spec.leatherThicknessMm());
        SheathDraft draft = new SheathDraft(knife, spec, cavity, form, leather, layers);
        DrawCheck check = cavity.check(draft.stitchesInPlane());
        List<Seam> seams = draft.seams();
        return new Pattern(
                draft.pieces(),
                seams,
                check,
                sizes(spec, form, draft.loop(), weltMm),
                Advice.on(knife, spec, check, layers, seams));
    }

    /** As many as make the welt at least as thick as the blade, unless the maker said how many. Common practice. */
    private static int weltLayers(Knife knife, SheathSpec spec) {
        return spec.weltLayers()
                .orElse((int) Math.max(1, Math.ceil(knife.spineThicknessMm() / spec.leatherThicknessMm() - 1e-9)));
    }

    private static List<Size> sizes(SheathSpec spec, Planform form, BeltLoop loop, double weltMm) {
        var outer = form.extent();
        return List.of(
                new Size(Size.LENGTH, outer.getWidth()),
                new Size(Size.LENGTH_WITH_LOOP, outer.getWidth() + loop.heightMm() + spec.leatherThicknessMm()),
                new Size(Size.WIDTH, outer.getHeight()),
                new Size("thickness of the sewn edge", weltMm + 2 * spec.leatherThicknessMm()),
                new Size("thickness of the welt", weltMm),
                new Size("width of the belt loop", loop.widthMm()));
    }
}
