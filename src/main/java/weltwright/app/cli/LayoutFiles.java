package weltwright.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.layout.StockLayout;
import weltwright.output.PaperSize;
import weltwright.output.cutter.CutPlan;
import weltwright.output.cutter.CutterDxf;
import weltwright.output.cutter.CutterSvg;
import weltwright.output.layout.LayoutPdf;

/** The files of one layout. */
record LayoutFiles(Path pdf, Path svg, Path dxf) {

    /**
     * Returns the files for layouts, numbered where there are several, without writing them. Makes the folder.
     *
     * @throws UserFacingException where they cannot be written
     */
    static List<LayoutFiles> in(Path folder, int layouts) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UserFacingException(
                    "The folder " + folder + " cannot be written.",
                    "Choose another, or have the right to write there given to you.",
                    e);
        }
        List<LayoutFiles> files = IntStream.rangeClosed(1, layouts)
                .mapToObj(i -> layouts == 1 ? "layout" : "layout-" + i)
                .map(name -> new LayoutFiles(
                        folder.resolve(name + ".pdf"), folder.resolve(name + ".svg"), folder.resolve(name + ".dxf")))
                .toList();
        for (LayoutFiles each : files) {
            AtomicFile.of(each.pdf, LayoutPdf.KIND).check();
            AtomicFile.of(each.svg, CutterSvg.KIND).check();
            AtomicFile.of(each.dxf, CutterDxf.KIND).check();
        }
        return files;
    }

    void write(StockLayout layout, CutPlan plan, LocalDate day, PaperSize paper) {
        LayoutPdf.write(layout, day, paper, pdf);
        CutterSvg.write(plan, svg);
        CutterDxf.write(plan, dxf);
    }

    List<Path> all() {
        return List.of(pdf, svg, dxf);
    }
}
