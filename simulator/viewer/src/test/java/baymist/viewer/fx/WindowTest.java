package baymist.viewer.fx;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.recording.Recording;
import baymist.scene.SceneContent;
import baymist.scene.io.SceneReader;
import baymist.viewer.ViewRequest;
import baymist.viewer.draw.Camera;
import baymist.viewer.draw.LabelPlaces;
import baymist.viewer.draw.PassHandle;
import baymist.viewer.draw.View;
import baymist.viewer.model.RegionList;
import baymist.viewer.model.WhatIf;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javafx.geometry.Point2D;
import javafx.scene.control.CheckBox;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One real window on a small job, driven by mouse and keys and looked at. */
class WindowTest {
    @TempDir
    static Path folder;

    private static ViewerWindow window;

    @BeforeAll
    static void open() throws Exception {
        Fx.start();
        Path file = SmallJob.file(folder);
        window = Fx.on(() -> ViewerWindow.open(new ViewRequest(file, null, 2, ViewRequest.Look.PLAIN), () -> {}));
        Fx.until("the run", 120, () -> window.desk().recording() != null);
    }

    @AfterAll
    static void close() throws Exception {
        if (window != null) {
            Fx.run(() -> window.stage().close());
        }
    }

    @BeforeEach
    void plain() throws Exception {
        Fx.run(() -> {
            if (!window.look().equals(ViewRequest.Look.PLAIN)) {
                window.relook(ViewRequest.Look.PLAIN);
            }
            ShowPane show = window.desk().showPane();
            show.cut(0, 0.5);
            show.apart(0);
            for (int p = 0; p < 9; p++) {
                show.showPart(p, true);
            }
            window.desk().timeBar().goTo(1e9);
            // a sheet before the film shades its colour; without it colours are those of the legend
            sheets(false);
        });
        settle();
        Fx.run(() -> window.desk().view().look(View.ISO));
        settle();
    }

    private static void sheets(boolean shown) {
        ((CheckBox) window.desk().switches().get(2)).setSelected(shown);
    }

    private static void settle() throws Exception {
        Thread.sleep(40);
        Fx.until("a settled picture", 30, () -> window.desk().view().settled());
    }

    private static double filmShare() throws Exception {
        settle();
        return Fx.share(Fx.picture(window.stage().getScene()), Fx::isFilm);
    }

    private static BayView view() {
        return window.desk().view();
    }

    @Test
    void filmIsSeenAndGrowsWithTime() throws Exception {
        double end = filmShare();
        assertTrue(end > 0.02, "share of film " + end);
        Fx.run(() -> window.desk().timeBar().goTo(0));
        double start = filmShare();
        Fx.run(() -> window.desk().timeBar().goTo(6));
        double middle = filmShare();
        assertTrue(start < middle && middle < end, start + ", " + middle + ", " + end);
    }

    @Test
    void sheetsInFrontLetFilmThrough() throws Exception {
        Pixels without = Fx.picture(window.stage().getScene());
        Fx.run(() -> sheets(true));
        settle();
        Pixels with = Fx.picture(window.stage().getScene());
        int changed = 0;
        int most = 0;
        for (int i = 0; i < with.rgb().length; i++) {
            if (Fx.isFilm(without.rgb()[i]) && with.rgb()[i] != without.rgb()[i]) {
                changed++;
                most = Math.max(most, Math.abs((with.rgb()[i] >> 8 & 255) - (without.rgb()[i] >> 8 & 255)));
            }
        }
        assertTrue(changed > 10_000, "pixels of film behind a sheet: " + changed);
        assertTrue(most < 60, "a sheet shades film by " + most + " of 255");
    }

    @Test
    void bareRegionsAreOutlinedAndListed() throws Exception {
        List<RegionList.Row> rows = Fx.on(() -> window.desk().places().rows());
        assertFalse(rows.isEmpty());
        int outline = 0xB3400E;
        // the legend shows the outline too, with some hundred pixels at most
        double pixels = Fx.share(Fx.picture(window.stage().getScene()), rgb -> near(rgb, outline)) * 1320 * 860;
        assertTrue(pixels > 300, "pixels of outline " + pixels);
    }

    private static boolean near(int rgb, int other) {
        int r = Math.abs((rgb >> 16 & 255) - (other >> 16 & 255));
        int g = Math.abs((rgb >> 8 & 255) - (other >> 8 & 255));
        int b = Math.abs((rgb & 255) - (other & 255));
        return r + g + b < 24;
    }

    @Test
    void hiddenPartsCutsAndBaysApartChangeThePicture() throws Exception {
        double all = filmShare();
        Fx.run(() -> window.desk().showPane().cut(4, 0.5));
        double half = filmShare();
        assertTrue(half < 0.75 * all && half > 0.2 * all, half + " of " + all);
        Fx.run(() -> {
            window.desk().showPane().cut(0, 0.5);
            window.desk().showPane().apart(0.5);
        });
        settle();
        double width = Fx.on(() -> view().picture().drawn().size().y());
        assertTrue(width > 1.4 * 1.2, "drawn over " + width + " m");
        Fx.run(() -> {
            window.desk().showPane().apart(0);
            for (int p = 0; p < 9; p++) {
                window.desk().showPane().showPart(p, false);
            }
        });
        double none = filmShare();
        assertTrue(none < 0.25 * all, none + " of " + all);
    }

    @Test
    void namesNeverLieOnEachOther() throws Exception {
        for (double scale : new double[] {1, 1.25, 2}) {
            Fx.run(() -> window.relook(new ViewRequest.Look(scale > 1, false, scale)));
            for (View side : View.values()) {
                Fx.run(() -> view().look(side));
                settle();
                List<LabelPlaces.Box> boxes = Fx.on(() -> view().overlay().shownNames());
                assertTrue(boxes.size() >= 2, side + " at " + scale + ": " + boxes.size() + " names");
                for (int i = 0; i < boxes.size(); i++) {
                    for (int j = 0; j < i; j++) {
                        assertFalse(boxes.get(i).meets(boxes.get(j), 0), side + " " + boxes);
                    }
                }
            }
        }
    }

    @Test
    void draggingTurnsTheCavityAndTheWheelBringsItNearer() throws Exception {
        Camera before = Fx.on(() -> view().camera());
        Point2D p = Fx.on(() -> view().localToScreen(view().getWidth() / 2, view().getHeight() / 2));
        for (Runnable step : List.<Runnable>of(
                () -> new Robot().mouseMove(p),
                () -> new Robot().mousePress(MouseButton.PRIMARY),
                () -> new Robot().mouseMove(p.add(20, 8)),
                () -> new Robot().mouseMove(p.add(60, 20)),
                () -> new Robot().mouseRelease(MouseButton.PRIMARY))) {
            Fx.run(step);
            Thread.sleep(150);
        }
        Fx.until("a turned camera", 10, () -> view().camera().yawRad() != before.yawRad());
        Camera turned = Fx.on(() -> view().camera());
        assertEquals(before.distanceM(), turned.distanceM());
        assertTrue(turned.pitchRad() > before.pitchRad());
        Fx.run(() -> new Robot().mouseWheel(-3));
        Fx.until("a nearer camera", 10, () -> view().camera().distanceM() < turned.distanceM());
    }

    @Test
    void keysTurnPlayAndStep() throws Exception {
        Camera before = Fx.on(() -> view().camera());
        Fx.run(() -> ViewerKeys.press(KeyCode.RIGHT, false, true, window.desk()));
        assertNotEquals(before.yawRad(), Fx.on(() -> view().camera()).yawRad());
        double end = Fx.on(() -> window.desk().timeBar().timeS());
        Fx.run(() -> ViewerKeys.press(KeyCode.COMMA, false, true, window.desk()));
        assertTrue(Fx.on(() -> window.desk().timeBar().timeS()) < end);
        Fx.run(() -> {
            window.desk().timeBar().goTo(0);
            ViewerKeys.press(KeyCode.SPACE, false, true, window.desk());
        });
        Fx.until("time going on", 10, () -> window.desk().timeBar().timeS() > 0.2);
        Fx.run(() -> ViewerKeys.press(KeyCode.SPACE, false, true, window.desk()));
        assertFalse(Fx.on(() -> window.desk().timeBar().playing()));
        assertFalse(Fx.on(() -> ViewerKeys.press(KeyCode.Q, false, true, window.desk())));
    }

    @Test
    void aClickTellsTheFilmThere() throws Exception {
        Point2D p = Fx.on(() -> view().localToScreen(0.5 * view().getWidth(), 0.45 * view().getHeight()));
        for (Runnable step : List.<Runnable>of(
                () -> new Robot().mouseMove(p),
                () -> new Robot().mousePress(MouseButton.PRIMARY),
                () -> new Robot().mouseRelease(MouseButton.PRIMARY))) {
            Fx.run(step);
            Thread.sleep(150);
        }
        Fx.until("an answer", 10, () -> window.desk().places().told().toString().contains("wet film"));
    }

    @Test
    void choosingABarePlaceFliesThere() throws Exception {
        RegionList.Row row = Fx.on(() -> window.desk().places().rows().get(1));
        Fx.run(() -> window.desk().places().choose(1));
        settle();
        Vec3 middle = row.region().extentM().centre();
        Fx.until("the flight's end", 20, () -> {
            Camera.Spot spot = view().camera().project(middle, view().getWidth(), view().getHeight());
            return spot != null
                    && Math.abs(spot.x() - view().getWidth() / 2) < 0.1 * view().getWidth()
                    && view().camera().target().distance(middle) < 1e-6;
        });
        assertTrue(Fx.on(() -> window.desk().places().told()).toString().contains("The tip sees"));
    }

    @Test
    void aPreviewStandsBesideTheFirstAndMovesWithIt() throws Exception {
        Fx.run(() -> {
            window.desk().whatIf().set("clock:trailing edge", "90");
            window.desk().previewNow();
        });
        Fx.until("the preview", 120, () -> window.desk().beside().difference() != null);
        assertTrue(Fx.on(() -> window.desk().beside().difference().lostM2()) > 0.01);
        Fx.run(() -> view().set(view().camera().turned(0.3, 0)));
        assertEquals(
                Fx.on(() -> view().camera()),
                Fx.on(() -> window.desk().beside().view().camera()));
        Fx.run(() -> window.desk().beside().showDifference(true));
        settle();
        Map<String, Integer> wanted = Map.of("lost", 0xB3400E, "gained", 0x1F4E9A);
        Pixels p = Fx.picture(window.stage().getScene());
        for (var e : wanted.entrySet()) {
            assertTrue(Fx.share(p, rgb -> near(rgb, e.getValue())) > 1e-4, e.getKey());
        }
        Fx.run(() -> window.desk().beside().clear());
    }

    private static void drag(Vec3 from, Vec3 to) throws Exception {
        Point2D begin = Fx.on(() -> onScreen(from));
        Point2D end = Fx.on(() -> onScreen(to));
        for (Runnable step : List.<Runnable>of(
                () -> new Robot().mouseMove(begin),
                () -> new Robot().mousePress(MouseButton.PRIMARY),
                () -> new Robot().mouseMove(begin.midpoint(end)),
                () -> new Robot().mouseMove(end),
                () -> new Robot().mouseRelease(MouseButton.PRIMARY))) {
            Fx.run(step);
            Thread.sleep(80);
        }
    }

    private static Point2D onScreen(Vec3 place) {
        HandleSheet sheet = view().handles();
        Camera.Spot spot = view().camera().project(place, sheet.getWidth(), sheet.getHeight());
        return sheet.localToScreen(spot.x(), spot.y());
    }

    @Test
    void handlesInThePictureChangeTheFieldsOfTheJob() throws Exception {
        String pass = "trailing edge";
        Fx.run(() -> {
            window.desk().whatIf().show(WhatIf.of(window.desk().opened().scene()));
            window.desk().handles().pass(pass);
            window.desk().handles().out(true);
        });
        settle();
        Camera before = Fx.on(() -> view().camera());
        PassHandle h = Fx.on(() -> view().handles().handle());
        // the tip to half of its depth
        Vec3 half = h.path().tipM(Math.max(h.toM(), 0.5 * h.fromM()));
        drag(h.fromPlace(), half);
        Fx.until("a shallower pass", 10, () -> view().handles().handle().fromM() < 0.7 * h.fromM());
        double fromM =
                Fx.on(() -> window.desk().whatIf().now().scene().passes().get(0).fromDepthM());
        assertEquals(Math.max(h.toM(), 0.5 * h.fromM()), fromM, 0.03);
        // the pin half round
        PassHandle now = Fx.on(() -> view().handles().handle());
        drag(now.pinPlace(), now.fromPlace().minus(now.pinPlace().minus(now.fromPlace())));
        Fx.until("a turned pin", 10, () -> view().handles().handle().clockRad() != h.clockRad());
        double clock =
                Fx.on(() -> window.desk().whatIf().now().scene().passes().get(0).clockRad());
        assertEquals(-1, Math.cos(clock - h.clockRad()), 0.02);
        assertEquals(before, Fx.on(() -> view().camera()), "the camera stays");
        assertEquals(2, Fx.on(() -> window.desk().whatIf().now().changes().size()));
        Fx.run(() -> {
            window.desk().whatIf().show(WhatIf.of(window.desk().opened().scene()));
            window.desk().handles().out(false);
        });
    }

    @Test
    void aClickOnAnOpeningGoesInThere() throws Exception {
        Fx.run(() -> window.desk().handles().out(true));
        settle();
        String entry =
                Fx.on(() -> window.desk().whatIf().now().scene().passes().get(0).entry());
        Overlay.Label other = Fx.on(() -> view().picture().labels().stream()
                .filter(l -> !l.opening().equals(entry) && !l.text().contains(entry))
                .findFirst()
                .orElseThrow());
        Point2D p = Fx.on(() -> onScreen(view().picture().placeOf(other)));
        for (Runnable step : List.<Runnable>of(
                () -> new Robot().mouseMove(p),
                () -> new Robot().mousePress(MouseButton.PRIMARY),
                () -> new Robot().mouseRelease(MouseButton.PRIMARY))) {
            Fx.run(step);
            Thread.sleep(80);
        }
        Fx.until(
                "another entry",
                10,
                () -> !window.desk()
                        .whatIf()
                        .now()
                        .scene()
                        .passes()
                        .get(0)
                        .entry()
                        .equals(entry));
        Fx.run(() -> {
            window.desk().whatIf().show(WhatIf.of(window.desk().opened().scene()));
            window.desk().handles().out(false);
        });
    }

    @Test
    void whatIsTriedIsSavedAsAScene() throws Exception {
        Path file = folder.resolve("tried.yaml");
        Fx.run(() -> {
            window.desk().whatIf().set("clock:trailing edge", "45");
            window.desk().beside().saveTo(window.desk().whatIf().now(), file.toFile());
        });
        assertTrue(Fx.on(() -> window.desk().whatIf().told()).contains("Written to"));
        assertTrue(SceneContent.same(Fx.on(() -> window.desk().whatIf().now().scene()), SceneReader.read(file)));
        // a folder can't be written to as a file: told in a sentence
        Fx.run(() -> window.desk().beside().saveTo(window.desk().whatIf().now(), folder.toFile()));
        String told = Fx.on(() -> window.desk().notice().words());
        assertTrue(told.contains("could not be written"), told);
        Fx.run(() -> {
            window.desk().notice().clear();
            window.desk().whatIf().show(WhatIf.of(window.desk().opened().scene()));
        });
    }

    @Test
    void theBestPoseOfABarePlaceIsGhosted() throws Exception {
        Fx.run(() -> {
            window.desk().places().choose(0);
            window.desk().places().askBest();
        });
        Fx.until("the pose", 120, () -> window.desk().places().told().toString().contains("Best pose"));
        assertTrue(Fx.on(() -> view().picture().ghost().node().isVisible()));
        Fx.run(() -> view().look(View.ISO));
        settle();
        Pixels with = Fx.picture(window.stage().getScene());
        Fx.run(() -> view().picture().ghost().show(null));
        settle();
        Pixels without = Fx.picture(window.stage().getScene());
        int changed = 0;
        for (int i = 0; i < with.rgb().length; i++) {
            changed += with.rgb()[i] != without.rgb()[i] ? 1 : 0;
        }
        assertTrue(changed > 100, "pixels of the ghost " + changed);
    }

    @Test
    void whyAPlaceIsBareIsTold() throws Exception {
        Fx.run(() -> {
            window.desk().places().choose(0);
            window.desk().patience(0.001);
            window.desk().places().askWhy();
        });
        int before = 2;
        Fx.until("the cause", 120, () -> window.desk().places().told().size() >= before + 3);
    }

    @Test
    void anImpossibleEditIsRefusedInASentence() throws Exception {
        Fx.run(() -> window.desk().whatIf().set("rate:trailing edge", "fast"));
        String told = Fx.on(() -> window.desk().whatIf().told());
        assertTrue(told.contains("fast"), told);
    }

    @Test
    void theSceneOnDiskIsReadAgainWhenAsked() throws Exception {
        Path file = folder.resolve("small.yaml");
        String text = Files.readString(file);
        try {
            Files.writeString(file, "baymist: 1\nnonsense: true\n");
            Fx.until("the question", 30, () -> window.desk().notice().words().contains("has changed on disk"));
            Fx.run(() -> window.desk().notice().act());
            Fx.until("the refusal", 30, () -> window.desk().notice().words().contains("nonsense"));
            assertTrue(Fx.on(() -> window.desk().recording()) != null, "what was read before is still there");
        } finally {
            Files.writeString(file, text);
        }
        Recording before = Fx.on(() -> window.desk().recording());
        Fx.until("the second question", 30, () -> window.desk().notice().words().contains("has changed on disk"));
        Fx.run(() -> window.desk().notice().act());
        Fx.until(
                "the run",
                120,
                () -> window.desk().recording() != null && window.desk().recording() != before);
    }
}
