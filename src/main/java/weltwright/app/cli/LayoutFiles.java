package weltwright.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.layout.StockLayout;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.cutter.CutPlan;
import weltwright.output.cutter.CutterDxf;
import weltwright.output.cutter.CutterSvg;
import weltwright.output.layout.LayoutPdf;
import weltwright.output.print.LayoutPagesPdf;
import weltwright.units.PrintScale;

/**
 * The files of one layout.
 *
 * @param pages the layout true to size on pages that join; empty where not wanted
 */
record LayoutFiles(Path pdf, Path svg, Path dxf, Optional<Path> pages) {
    private static final Messages TEXTS = Messages.of(LayoutFiles.class);

    /**
     * Returns the files for layouts, numbered where there are several, without writing them. Makes the folder.
     *
     * @throws UserFacingException where they cannot be written
     */
    static List<LayoutFiles> in(Path folder, int layouts, boolean trueSize) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UserFacingException(
                    TEXTS.text("layout-files.the-folder-cannot-be-written", folder),
                    TEXTS.text("layout-files.choose-another-or-have-the"),
                    e);
        }
        List<LayoutFiles> files = IntStream.rangeClosed(1, layouts)
                .mapToObj(i -> layouts == 1 ? "layout" : "layout-" + i)
                .map(name -> new LayoutFiles(
                        folder.resolve(name + ".pdf"),
                        folder.resolve(name + ".svg"),
                        folder.resolve(name + ".dxf"),
                        trueSize ? Optional.of(folder.resolve(name + "-true-size.pdf")) : Optional.empty()))
                .toList();
        for (LayoutFiles each : files) {
            AtomicFile.of(each.pdf, LayoutPdf.KIND).check();
            AtomicFile.of(each.svg, CutterSvg.KIND).check();
            AtomicFile.of(each.dxf, CutterDxf.KIND).check();
            each.pages.ifPresent(
                    file -> AtomicFile.of(file, LayoutPagesPdf.KIND).check());
        }
        return files;
    }

    void write(StockLayout layout, CutPlan plan, PageHeading heading, PaperSize paper) {
        LayoutPdf.write(layout, heading.date(), paper, pdf);
        CutterSvg.write(plan, svg);
        CutterDxf.write(plan, dxf);
        pages.ifPresent(file -> LayoutPagesPdf.write(layout, heading, paper, PrintScale.TRUE, file));
    }

    List<Path> all() {
        return Stream.concat(Stream.of(pdf, svg, dxf), pages.stream()).toList();
    }
}
