package weltwright.app.gui.paper;

import java.awt.print.PrinterException;
import java.awt.print.PrinterJob;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.print.PrintService;
import javax.print.attribute.HashPrintRequestAttributeSet;
import javax.print.attribute.PrintRequestAttributeSet;
import javax.print.attribute.standard.JobName;
import javax.print.attribute.standard.MediaSizeName;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.error.UserFacingException;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.io.FileKind;
import weltwright.job.JobFile;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.cutter.CutPlan;
import weltwright.output.cutter.CutterBed;
import weltwright.output.cutter.CutterDxf;
import weltwright.output.cutter.CutterSvg;
import weltwright.output.pdf.PrintPages;
import weltwright.output.pdf.TrueSizePdf;
import weltwright.output.print.PatternDocument;
import weltwright.output.print.PatternPdf;
import weltwright.output.print.SheetPdf;
import weltwright.sheath.pattern.Pattern;
import weltwright.units.MeasureUnit;

/** Saves and prints the reference sheet and the pattern. */
public final class OutputActions {
    private final Messages messages = Messages.of(OutputActions.class);
    private final JobModel model;
    private final Supplier<Optional<Pattern>> pattern;
    private final PaperModel paper;
    private final PrinterPreferences printerPreferences;
    private final CutterPreferences cutterPreferences;
    private final TaskQueue tasks;
    private final FileDialogs dialogs;
    private final Consumer<String> notifier;
    private final BiConsumer<String, Path> savedNotifier;
    private Optional<Pattern> onPaper = Optional.empty();

    /**
     * @param pattern returns the pattern of the present job; empty where there is none
     * @param paper the chosen printer and pages
     * @param savedNotifier shows a message about a saved file
     */
    public OutputActions(
            JobModel model,
            Supplier<Optional<Pattern>> pattern,
            PaperModel paper,
            PrinterPreferences printerPreferences,
            CutterPreferences cutterPreferences,
            TaskQueue tasks,
            FileDialogs dialogs,
            Consumer<String> notifier,
            BiConsumer<String, Path> savedNotifier) {
        this.model = model;
        this.pattern = pattern;
        this.paper = paper;
        this.printerPreferences = printerPreferences;
        this.cutterPreferences = cutterPreferences;
        this.tasks = tasks;
        this.dialogs = dialogs;
        this.notifier = notifier;
        this.savedNotifier = savedNotifier;
    }

    /** Saves the reference sheet for the printer's paper. */
    public void saveSheet() {
        saveSheet(sheet());
    }

    public void saveSheet(ReferenceSheet sheet) {
        dialogs.chooseSaveFile(
                        messages.text("save.sheet.title"),
                        "reference-sheet-" + sheet.pageName(),
                        "PDF",
                        "pdf",
                        SheetPdf.KIND)
                .ifPresent(file -> write(messages.text("save.sheet.task"), file, Optional.empty(), () -> {
                    SheetPdf.write(sheet, file);
                    return Optional.empty();
                }));
    }

    /** Prints the reference sheet, after the printer's own window. */
    public void printSheet() {
        ReferenceSheet sheet = sheet();
        String title = messages.text("print.sheet.task");
        tasks.submit(title, () -> SheetPdf.pages(sheet), pages -> showPrintDialog(title, pages, Optional.empty()));
    }

    public void savePdf() {
        pattern.get()
                .ifPresent(made -> dialogs.chooseSaveFile(
                                messages.text("save.pattern.title"),
                                baseName() + "-pattern",
                                "PDF",
                                "pdf",
                                PatternPdf.KIND)
                        .ifPresent(file -> {
                            PatternPrintout printout = PatternPrintout.of(made, model, printerPreferences);
                            write(messages.text("save.pattern.task"), file, Optional.of(made), () -> {
                                TrueSizePdf.write(printout.document().pages().bytes(), file);
                                return PatternPdf.unprintable(printout.heading());
                            });
                        }));
    }

    /** Returns whether the pattern, as it is now, was printed or saved as PDF since the window was opened. */
    public boolean isOnPaper() {
        return onPaper.isPresent() && onPaper.equals(pattern.get());
    }

    public void saveSvg() {
        saveForCutter("SVG", "svg", CutterSvg.KIND, CutterSvg::write);
    }

    public void saveDxf() {
        saveForCutter("DXF", "dxf", CutterDxf.KIND, CutterDxf::write);
    }

    private void saveForCutter(String kind, String extension, FileKind fileKind, BiConsumer<CutPlan, Path> writer) {
        pattern.get()
                .ifPresent(made -> dialogs.chooseSaveFile(
                                messages.text("save.cutter.title"), baseName() + "-pattern", kind, extension, fileKind)
                        .ifPresent(file -> {
                            PageHeading heading = PatternPrintout.heading(model.job());
                            CutterBed bed = cutterPreferences.bed();
                            MeasureUnit unit = model.unit();
                            tasks.submit(
                                    messages.text("save.pattern.task"),
                                    () -> {
                                        CutPlan plan = CutPlan.of(made, bed, heading, unit);
                                        writer.accept(plan, file);
                                        return plan;
                                    },
                                    plan -> savedNotifier.accept(
                                            (String.join(" ", plan.advice()) + " "
                                                            + messages.text("save.cutter.done", file))
                                                    .strip(),
                                            file));
                        }));
    }

    /** Prints the pattern, after the printer's own window. */
    public void print() {
        pattern.get().ifPresent(made -> {
            PatternPrintout printout = PatternPrintout.of(made, model, printerPreferences);
            String title = messages.text("print.pattern.task");
            tasks.submit(
                    title,
                    () -> new PrintPages(printout.document().pages().bytes()),
                    pages -> showPrintDialog(title, pages, Optional.of(made)));
        });
    }

    /** Prints the chosen pages on the chosen printer. */
    public void printChosenPages() {
        Optional<PrintService> printer = paper.printer();
        Optional<PatternDocument> document = paper.document().filter(made -> !paper.isComputing());
        Optional<Pattern> printing = pattern.get();
        if (printer.isEmpty() || document.isEmpty()) {
            return; // the button is disabled
        }
        List<Integer> chosen = paper.chosenPages();
        PrintRequestAttributeSet attributes = new HashPrintRequestAttributeSet();
        attributes.add(new JobName(baseName(), null));
        Set<Optional<MediaSizeName>> papers = new HashSet<>();
        chosen.forEach(page ->
                papers.add(PrinterFit.paper(document.get().pages().sizes().get(page))));
        if (papers.size() == 1) { // several sizes are told to the printer page by page
            papers.iterator().next().ifPresent(attributes::add);
        }
        PrintPages pages = new PrintPages(document.get().pages().bytes(), chosen);
        submit(
                messages.text("print.pattern.task"),
                pages,
                printer.get().getName(),
                () -> {
                    PrinterJob job = PrinterJob.getPrinterJob();
                    job.setPrintService(printer.get());
                    job.setPageable(pages);
                    job.print(attributes);
                },
                printing);
    }

    /**
     * Shows the print dialog and prints the pages in the background.
     *
     * @param shown the pattern on them; empty where they show none
     */
    private void showPrintDialog(String title, PrintPages pages, Optional<Pattern> shown) {
        PrinterJob job = PrinterJob.getPrinterJob();
        if (job.getPrintService() == null) {
            pages.close();
            notifier.accept(messages.text("form.printer.noneText"));
            return;
        }
        paper.printer().ifPresent(chosen -> choose(job, chosen));
        job.setPageable(pages);
        if (!job.printDialog()) {
            pages.close();
            return;
        }
        submit(title, pages, job.getPrintService().getName(), job::print, shown);
    }

    /** Sets the printer that the dialog begins with; where it is gone, the dialog begins with another. */
    private static void choose(PrinterJob job, PrintService printer) {
        try {
            job.setPrintService(printer);
        } catch (PrinterException e) {
            // The dialog shows which printer is chosen.
        }
    }

    /** Prints to a printer. */
    private interface Printing {
        void print() throws PrinterException;
    }

    private void submit(String title, PrintPages pages, String printer, Printing printing, Optional<Pattern> shown) {
        int count = pages.getNumberOfPages();
        tasks.submit(
                title,
                () -> {
                    try (pages) {
                        printing.print();
                        return count;
                    } catch (PrinterException e) {
                        throw new UserFacingException(
                                messages.text("print.refused"), messages.text("print.refused.cure"), e);
                    }
                },
                printed -> {
                    onPaper = shown.or(() -> onPaper);
                    notifier.accept(messages.text("print.done", printed, printer));
                });
    }

    /**
     * @param shown the pattern in the file; empty where it shows none
     * @param writer writes the file and returns an optional remark for the user
     */
    private void write(String title, Path file, Optional<Pattern> shown, Callable<Optional<String>> writer) {
        tasks.submit(title, writer, remark -> {
            onPaper = shown.or(() -> onPaper);
            savedNotifier.accept(
                    messages.text("save.done", file)
                            + remark.map(text -> " " + text).orElse(""),
                    file);
        });
    }

    private String baseName() {
        return JobFile.suggestedName(model.job());
    }

    private ReferenceSheet sheet() {
        return switch (printerPreferences.paper()) {
            case A4, ONE_LARGE_PAGE -> ReferenceSheet.A4;
            case LETTER -> ReferenceSheet.LETTER;
            case A3 -> ReferenceSheet.A3;
            case TABLOID -> ReferenceSheet.TABLOID;
        };
    }
}
