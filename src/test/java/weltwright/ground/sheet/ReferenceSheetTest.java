package weltwright.ground.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.Set;
import java.util.stream.IntStream;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.indexer.IntIndexer;
import org.bytedeco.javacpp.indexer.UByteIndexer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_objdetect;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Point3f;
import org.bytedeco.opencv.opencv_core.Point3fVector;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_objdetect.CharucoBoard;
import org.bytedeco.opencv.opencv_objdetect.Dictionary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.geometry.Point;
import weltwright.ground.sheet.ReferenceSheet.Marker;
import weltwright.image.opencv.OpenCvLibraries;

/** The sheet's geometry against OpenCV's own board, and its pages against the standards. */
class ReferenceSheetTest {

    @Test
    void pagesAreStandardSizes() {
        // ISO 216: A4 is 210 x 297 mm, A3 is 297 x 420 mm.
        assertThat(ReferenceSheet.A4.pageWidthMm()).isEqualTo(210);
        assertThat(ReferenceSheet.A4.pageHeightMm()).isEqualTo(297);
        assertThat(ReferenceSheet.A3.pageWidthMm()).isEqualTo(297);
        assertThat(ReferenceSheet.A3.pageHeightMm()).isEqualTo(420);
        // ANSI/ASME Y14.1: A is 8.5 x 11 in, B is 11 x 17 in; 1 in = 25.4 mm exactly (international yard and pound).
        assertThat(ReferenceSheet.LETTER.pageWidthMm()).isEqualTo(8.5 * 25.4, within(1e-9));
        assertThat(ReferenceSheet.LETTER.pageHeightMm()).isEqualTo(11 * 25.4, within(1e-9));
        assertThat(ReferenceSheet.TABLOID.pageWidthMm()).isEqualTo(11 * 25.4, within(1e-9));
        assertThat(ReferenceSheet.TABLOID.pageHeightMm()).isEqualTo(17 * 25.4, within(1e-9));
    }

    @ParameterizedTest
    @EnumSource
    void innerCornersLieWhereOpenCvHasThem(ReferenceSheet sheet) {
        try (CharucoBoard board = board(sheet);
                Point3fVector corners = board.getChessboardCorners()) {
            assertThat(corners.size()).isEqualTo(sheet.cornerCount());
            for (int id = 0; id < sheet.cornerCount(); id++) {
                assertSamePlace(sheet, sheet.corner(id), corners.get(id));
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void markersHaveOpenCvsIdsAndPlaces(ReferenceSheet sheet) {
        try (CharucoBoard board = board(sheet);
                IntPointer ids = board.getIds()) {
            Set<Integer> printed = new HashSet<>();
            for (int i = 0; i < board.getObjPoints().size(); i++) {
                int id = ids.get(i);
                assertThat(id).isEqualTo(sheet.firstId() + i);
                Point3fVector places = board.getObjPoints().get(i);
                sheet.marker(id).ifPresent(marker -> {
                    printed.add(id);
                    for (int k = 0; k < 4; k++) {
                        assertSamePlace(sheet, sheet.markerCorners(marker).get(k), places.get(k));
                    }
                });
            }
            assertThat(sheet.markers()).extracting(Marker::id).containsExactlyInAnyOrderElementsOf(printed);
        }
    }

    /** Square by square and cell by cell the same picture as OpenCV draws. */
    @ParameterizedTest
    @EnumSource
    void theFrameIsOpenCvsPictureOfTheBoard(ReferenceSheet sheet) {
        // A whole number of pixels to each cell of a marker, so that OpenCV's drawing has no part pixels.
        int perCell = 6;
        int perMarker = perCell * ReferenceSheet.MARKER_CELLS;
        int perSquare = (int) Math.round(perMarker * sheet.squareMm() / sheet.markerMm());
        assertThat(perSquare * sheet.markerMm()).isEqualTo(perMarker * sheet.squareMm());
        try (CharucoBoard board = board(sheet);
                Mat image = new Mat();
                Size size = new Size(sheet.squaresAcross() * perSquare, sheet.squaresDown() * perSquare)) {
            board.generateImage(size, image, 0, 1);
            try (UByteIndexer pixels = image.createIndexer()) {
                for (int row = 0; row < sheet.squaresDown(); row++) {
                    for (int column = 0; column < sheet.squaresAcross(); column++) {
                        boolean black = pixels.get(row * perSquare + 1, column * perSquare + 1) == 0;
                        assertThat(sheet.isBlack(column, row)).isEqualTo(black);
                    }
                }
                for (Marker marker : sheet.markers()) {
                    boolean[][] black = ReferenceSheet.blackCells(marker);
                    int in = (perSquare - perMarker) / 2;
                    for (int r = 0; r < ReferenceSheet.MARKER_CELLS; r++) {
                        for (int c = 0; c < ReferenceSheet.MARKER_CELLS; c++) {
                            int y = marker.row() * perSquare + in + perCell * r + perCell / 2;
                            int x = marker.column() * perSquare + in + perCell * c + perCell / 2;
                            assertThat(black[r][c]).isEqualTo(pixels.get(y, x) == 0);
                        }
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void theFrameIsTwoSquaresWideAndItsWholeCornersAreItsMiddleLine(ReferenceSheet sheet) {
        int across = sheet.squaresAcross();
        int down = sheet.squaresDown();
        long printed = IntStream.range(0, across * down)
                .filter(i -> sheet.isPrinted(i % across, i / across))
                .count();
        assertThat(printed).isEqualTo((long) across * down - (long) (across - 4) * (down - 4));
        // A corner with four printed squares round it is one square in from the board's rim, on a ring of
        // (across - 1) by (down - 1) points.
        long corners = IntStream.range(0, sheet.cornerCount())
                .filter(sheet::isCornerPrinted)
                .peek(id -> {
                    Point at = sheet.corner(id);
                    double fromRim = Math.min(
                            sheet.boardWidthMm() / 2 - Math.abs(at.x()), sheet.boardHeightMm() / 2 - Math.abs(at.y()));
                    assertThat(fromRim).isEqualTo(sheet.squareMm(), within(1e-9));
                })
                .count();
        assertThat(corners).isEqualTo(2L * (across - 1) + 2L * (down - 1) - 4);
    }

    @Test
    void anIdTellsTheSheet() {
        for (ReferenceSheet sheet : ReferenceSheet.values()) {
            assertThat(sheet.boardWidthMm()).isLessThan(sheet.pageWidthMm());
            assertThat(sheet.boardHeightMm()).isLessThan(sheet.pageHeightMm());
            for (Marker marker : sheet.markers()) {
                // The dictionary has a thousand markers.
                assertThat(marker.id()).isBetween(0, 999);
                assertThat(ReferenceSheet.ofMarker(marker.id())).contains(sheet);
            }
        }
        assertThat(ReferenceSheet.ofMarker(199)).isEmpty();
        assertThat(ReferenceSheet.ofMarker(999)).isEmpty();
    }

    /** OpenCV's board frame is from the top left corner, y down; its numbers are 32-bit. */
    private static void assertSamePlace(ReferenceSheet sheet, Point ours, Point3f theirs) {
        assertThat(ours.x() + sheet.boardWidthMm() / 2).isEqualTo(theirs.x(), within(1e-4));
        assertThat(sheet.boardHeightMm() / 2 - ours.y()).isEqualTo(theirs.y(), within(1e-4));
        assertThat(theirs.z()).isZero();
    }

    /** The whole board as OpenCV makes it: from the top left corner, y down the page, in mm. */
    private static CharucoBoard board(ReferenceSheet sheet) {
        OpenCvLibraries.load();
        int count = sheet.squaresAcross() * sheet.squaresDown() / 2;
        try (Dictionary dictionary = opencv_objdetect.getPredefinedDictionary(opencv_objdetect.DICT_5X5_1000);
                Size size = new Size(sheet.squaresAcross(), sheet.squaresDown());
                Mat ids = new Mat(count, 1, opencv_core.CV_32SC1)) {
            try (IntIndexer into = ids.createIndexer()) {
                for (int i = 0; i < count; i++) {
                    into.put(i, 0, sheet.firstId() + i);
                }
            }
            return new CharucoBoard(size, (float) sheet.squareMm(), (float) sheet.markerMm(), dictionary, ids);
        }
    }
}
