package weltwright.job;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import javax.imageio.ImageIO;
import weltwright.camera.CameraView;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.image.Photo;
import weltwright.image.metadata.CameraIdentity;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.knife.HandleSection;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;
import weltwright.knife.ThicknessProfile;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.StretchRule;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.hardware.Ring;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.InsertionDepth;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Stitching;
import weltwright.sheath.spec.StrapLeather;
import weltwright.sheath.spec.Throat;
import weltwright.sheath.spec.WeltSpec;
import weltwright.trace.Trace;
import weltwright.trace.capture.KnifeMark;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.quality.LandmarkUncertainty;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;
import weltwright.trace.report.TraceNote;
import weltwright.units.PrintScale;

/** Invented jobs for tests, their numbers chosen to need every bit of a double. */
public final class TestJobs {
    /** As jobs of version 6 and those before it took it for granted. */
    private static final StrapLeather FIVE_EIGHTHS = new StrapLeather(25.4 * 5 / 8, OptionalDouble.empty());

    private TestJobs() {}

    /** A knife of 100 mm blade and 110 mm handle: straight spine, curved belly. */
    public static Silhouette silhouette() {
        Outline outline = new Outline(List.of(
                new OutlineNode(new Point(-110, -12), true),
                new OutlineNode(new Point(-50, -14 - 1 / 3.0), false),
                new OutlineNode(new Point(0, -12), true),
                new OutlineNode(new Point(40, -13.1), false),
                new OutlineNode(new Point(75, -9), false),
                new OutlineNode(new Point(100, 2), true),
                new OutlineNode(new Point(60, 11.7), false),
                new OutlineNode(new Point(0, 12), true),
                new OutlineNode(new Point(-110, 12), true)));
        return new Silhouette(
                outline,
                new Landmarks(new Point(100, 2), new Point(0, -12), new Point(0, 12), new Point(-110, 0)),
                true);
    }

    public static Photo photo() {
        try {
            ByteArrayOutputStream png = new ByteArrayOutputStream();
            ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB), "png", png);
            return Photo.of("Anouk's knife, näher dran.png", png.toByteArray());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Every field filled in. */
    public static Job full() {
        Silhouette traced = silhouette();
        Trace trace = new Trace(
                traced,
                new CameraView(
                        new PinholeCamera(2271.5 / 3, 1511.5, Math.PI * 300, -0.03, 1e-17),
                        new Vector3(Math.sqrt(2), -0.0, Double.MIN_VALUE),
                        new Vector3(0.1 + 0.2, 1 / 3.0, 360)),
                new Plane(9.5, new Point(1e-4, -0.01 / 3)),
                new RigidMotion(Math.E / 3, new Point(4.1, -7.7)),
                new ErrorBudget(
                        0.21,
                        List.of(new ErrorBudget.Part(
                                new ErrorSource.FreeText("height", "Measure the handle again."), 0.2))),
                new LandmarkUncertainty(0.31, 0.75),
                List.of(new UncertainStretch(new Point(75.1, -9), new Point(99 + 1 / 3.0, 1.7))),
                List.of(
                        new TraceNote.FreeText("Focal length from the photo: 26 mm."),
                        new TraceNote.FreeText("Zeile mit ½ und “Anführung”")));
        Outline corrected = traced.outline().map(p -> p.times(1 + 1e-3 / 3));
        return new Job(
                "Anouk",
                "drop point, bog oak",
                LocalDate.of(2024, 2, 29),
                Optional.of(LocalDate.of(2024, 4, 1)),
                Optional.of(LocalDate.of(2024, 3, 30)),
                "Belt is worn high.\nWants brass.",
                Optional.of(photo()),
                new TraceSettings(
                        OptionalDouble.of(19 + 1 / 7.0),
                        OptionalDouble.of(3.5),
                        0.3,
                        OptionalDouble.of(26.1),
                        new PrintScale(0.997, 1 / 0.999),
                        new GroundChoice.Ruled(25.4 / 2),
                        Optional.of(PhoneLensStoreTest.lens(
                                "Tomás", Optional.of(new CameraIdentity("Invented", "Model 3")), 26)),
                        ThicknessProfile.NONE,
                        HandleSection.SLAB,
                        false,
                        List.of(new KnifeMark(new Point(1310.5, 742), true), new KnifeMark(new Point(40, 60), false))),
                Optional.of(trace),
                Optional.of(new Silhouette(corrected, traced.landmarks(), false)),
                trace.unsure(),
                List.of(
                        new CaliperMeasure(OptionalDouble.empty(), 100 + 1 / 3.0, 99.7),
                        new CaliperMeasure(OptionalDouble.of(Math.PI * 10), 24.9, 25 - 1 / 7.0)),
                Optional.of(false),
                new CrossSectionShape(0.4, new Grind(Grind.Kind.HOLLOW, 11 + 1 / 3.0), 2 + 1 / 7.0),
                new SheathSpec(
                        SheathKind.PANELS,
                        new CarryPosition(DrawHand.LEFT, CarryPosition.Edge.BACK, Math.toRadians(12)),
                        new Leather(25.4 / 8, 0.45, 1 / 30.0, Leather.Bulge.FACE),
                        new WeltSpec(OptionalInt.of(2), 5, List.of(25.4 / 12, 3.0), true),
                        new Stitching(3.2, 25.4 / 7, 3, OptionalDouble.of(0.8 + 1 / 30.0)),
                        new Throat(Throat.Shape.SLANTED_TO_SPINE, 5 + 1 / 3.0),
                        new BeltAttachment(BeltAttachment.Style.SEWN_STRAP, 38, 4, FIVE_EIGHTHS),
                        Optional.of(new HandleStrap(18, HandleStrap.Side.LEFT, 1.5, FIVE_EIGHTHS)),
                        0.8,
                        InsertionDepth.ofHandle(12),
                        new DrainHole(0, true),
                        new HardwareList(
                                List.of(new Fastener("eyelet", Hardware.Kind.EYELET, 5 + 1 / 7.0, 9, 1, 4)),
                                List.of(new Ring("ring", 20, 3)))),
                cutting(),
                Map.of("prepare/cut/body", LocalDateTime.of(2024, 3, 9, 14, 5, 33)),
                Map.of("leather thickness", "8 oz"));
    }

    private static CuttingPlan cutting() {
        return new CuttingPlan(
                List.of("shoulder", "panel 2"),
                OptionalInt.of(3),
                StretchRule.ALONG,
                new Spacing(2 + 1 / 3.0, 4),
                List.of(new CuttingPlan.HandLayout(
                        "shoulder",
                        List.of(new CuttingPlan.Placement(
                                "face", new RigidMotion(Math.PI / 7, new Point(100 / 3.0, -5)))))));
    }
}
