package baymist.verify;

import baymist.fog.DepositionLaw;
import baymist.scene.WallFinish;
import baymist.spray.Droplet;
import baymist.units.Air;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * The wall law against measured ducts. {@code data} names the table (two values a wall and test, as v+ = v_d/u*), {@code duct} its rows, {@code finish} the
 * law's walls.
 */
final class DuctQuantities {
    /** Density of the fluorescent particles, kg/m³, and temperature of the air, K, as in the data set. */
    private static final double DENSITY = 950;

    private static final double TEMPERATURE_K = 299.05;

    private DuctQuantities() {}

    static Map<String, ToDoubleFunction<Inputs>> all() {
        Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();
        all.put("ductLogError", DuctQuantities::logError);
        all.put("ductOrderBroken", DuctQuantities::orderBroken);
        all.put("ductWallOverFloor", DuctQuantities::wallOverFloor);
        return all;
    }

    /** Root mean square of log10(law/measured) over the rows of a duct and a wall. */
    private static double logError(Inputs in) {
        double sum = 0;
        int count = 0;
        for (CSVRecord row : rows(in)) {
            double law = plus(in, row, in.word("wall"));
            for (String side : List.of("_a", "_b")) {
                double log = Math.log10(law / number(row, in.word("wall") + side));
                sum += log * log;
                count++;
            }
        }
        return Math.sqrt(sum / count);
    }

    /** Rows in which floor > wall > ceiling does not hold for the law. */
    private static double orderBroken(Inputs in) {
        int broken = 0;
        for (CSVRecord row : rows(in)) {
            boolean ordered =
                    plus(in, row, "floor") > plus(in, row, "wall") && plus(in, row, "wall") > plus(in, row, "ceiling");
            broken += ordered ? 0 : 1;
        }
        return broken;
    }

    /** Rate on upright walls over that on the floor, in one {@code test}. */
    private static double wallOverFloor(Inputs in) {
        for (CSVRecord row : rows(in)) {
            if (row.get("test").equals(in.word("test"))) {
                return plus(in, row, "wall") / plus(in, row, "floor");
            }
        }
        throw new IllegalArgumentException("there is no test \"" + in.word("test") + "\"");
    }

    private static double plus(Inputs in, CSVRecord row, String wall) {
        double d = 1e-6 * number(row, "diameter_um");
        double friction = number(row, "friction_m_s");
        Air air = Air.at(TEMPERATURE_K, Air.STANDARD.pressurePa());
        DepositionLaw law = new DepositionLaw(
                d,
                Droplet.slip(d, air),
                Droplet.relaxationTimeS(d, DENSITY, air),
                Droplet.stokesSettlingMPerS(d, DENSITY, air, Air.GRAVITY),
                air,
                WallFinish.valueOf(in.word("finish").toUpperCase(Locale.ROOT)));
        double up = wall.equals("floor") ? 1 : wall.equals("wall") ? 0 : -1;
        return law.speedMPerS(friction, up) / friction;
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static List<CSVRecord> rows(Inputs in) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = format.parse(Files.newBufferedReader(in.file("data"), StandardCharsets.UTF_8))) {
            List<CSVRecord> all = parser.getRecords().stream()
                    .filter(r -> r.get("duct").equals(in.word("duct")))
                    .toList();
            if (all.isEmpty()) {
                throw new IllegalArgumentException("no rows of duct \"" + in.word("duct") + "\"");
            }
            return all;
        } catch (IOException e) {
            throw new IllegalArgumentException("the data can't be read: " + e.getMessage(), e);
        }
    }
}
