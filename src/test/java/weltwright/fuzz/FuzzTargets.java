package weltwright.fuzz;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.nio.file.Path;
import java.util.List;
import weltwright.app.cli.OptionTextFuzzTarget;
import weltwright.app.cli.OutlineJsonFuzzTarget;
import weltwright.image.ExifFuzzTarget;
import weltwright.image.PhotoFuzzTarget;
import weltwright.job.HardwareFileFuzzTarget;
import weltwright.job.JobDocumentFuzzTarget;
import weltwright.job.JobFileFuzzTarget;
import weltwright.job.PriceFileFuzzTarget;
import weltwright.job.StockShelfFuzzTarget;
import weltwright.output.cutter.CutterDrawingFuzzTarget;
import weltwright.trace.ground.RectangleParserFuzzTarget;
import weltwright.units.LengthFieldFuzzTarget;

/** The fuzz targets: all places where the program reads what it has not written, and two that it writes. */
final class FuzzTargets {
    /** All of them. */
    static final List<Class<?>> ALL = List.of(
            JobFileFuzzTarget.class,
            JobDocumentFuzzTarget.class,
            PhotoFuzzTarget.class,
            ExifFuzzTarget.class,
            LengthFieldFuzzTarget.class,
            OptionTextFuzzTarget.class,
            RectangleParserFuzzTarget.class,
            HardwareFileFuzzTarget.class,
            StockShelfFuzzTarget.class,
            PriceFileFuzzTarget.class,
            OutlineJsonFuzzTarget.class,
            CutterDrawingFuzzTarget.class);

    private FuzzTargets() {}

    /** Returns the folder of inputs that are kept for a target: samples, and what was found with it. */
    static Path corpus(Class<?> target) {
        return Path.of("src", "test", "resources", "fuzz", target.getSimpleName());
    }

    /** Returns the method of a target that takes an input. */
    static MethodHandle method(Class<?> target) throws ReflectiveOperationException {
        return MethodHandles.publicLookup()
                .findStatic(target, "fuzzerTestOneInput", MethodType.methodType(void.class, byte[].class));
    }
}
