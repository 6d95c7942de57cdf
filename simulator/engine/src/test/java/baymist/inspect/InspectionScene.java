package baymist.inspect;

import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A small job of our own invention: three bays in a row behind one hole. */
final class InspectionScene {
    static final String TEXT = """
            baymist: 1
            title: Test beam through its cap
            cavity:
              family: box_section
              name: test beam
              gauge: 1 mm
              rectangle: {width: 70 mm, height: 90 mm}
              line:
                - {at: [0 mm, 0 mm, 0 mm]}
                - {at: [600 mm, 0 mm, 0 mm]}
              start: {cap: closed, holes: [{name: cap hole, shape: {circle: 14 mm}, up: 0 mm}]}
              end: {cap: closed, holes: [{name: end vent, shape: {circle: 12 mm}, up: 0 mm}]}
              baffles:
                - {along: 200 mm, holes: [{name: first hole, shape: {circle: 24 mm}, up: 0 mm}]}
                - {along: 400 mm, holes: [{name: second hole, shape: {circle: 24 mm}, up: 0 mm}]}
              holes:
                - {name: drain 1, wall: bottom, shape: {circle: 6 mm}, along: 100 mm}
                - {name: drain 2, wall: bottom, shape: {circle: 6 mm}, along: 500 mm}
            wands:
              - name: test wand
                length: 700 mm
                outer_diameter: 6 mm
                bore: 3 mm
                tip: {name: ring of 6, ring: {jets: 6, orifice: 0.4 mm}}
            product: {name: test oil, density: 870 kg/m3, viscosity: 18 cSt, surface_tension: 0.03 N/m, non_volatile: 98 %}
            supply:
              pressure: 60 psi
              liquid: 60 mL/min
              droplets: {rosin_rammler: {dv50: 5 um, spread: 2}, dv50_within: 1.6}
            entries:
              - {name: cap, opening: cap hole, direction: [1, 0, 0]}
            passes:
              - {name: draw, entry: cap, wand: test wand, from: 180 mm, to: 60 mm, draw_back: 25 mm/s}
            hang: 25 s
            voxel: 10 mm
            air: projected
            numerics: {size_bins: 6, rays_per_jet: 512}
            card: {interval: 24 months, allowance: 25 %, cup: 10 mL}
            """;

    private InspectionScene() {}

    static Scene in(Path folder) throws IOException {
        Path file = folder.resolve("beam.yaml");
        Files.writeString(file, TEXT);
        return SceneReader.read(file);
    }
}
