"""Reads an export back with VTK's own readers and holds it against result.json.

    python3 read_back.py FOLDER

FOLDER holds everything that `baymist export` writes. Needs Debian's python3-vtk9 (VTK, BSD licence; Kitware) and nothing of Baymist. Prints
one line a check and ends with 1 if one of them fails, with 77 where VTK is missing.
"""

import csv
import json
import math
import os
import sys
import xml.etree.ElementTree

try:
    import numpy
    from vtkmodules.util.numpy_support import vtk_to_numpy
    from vtkmodules.vtkIOGeometry import vtkGLTFReader
    from vtkmodules.vtkIOXML import vtkXMLImageDataReader, vtkXMLPolyDataReader
except ImportError as missing:
    print("VTK is missing:", missing)
    sys.exit(77)

FAILED = []


def same(what, found, expected, relative=0.0):
    """Prints a check; two numbers are the same within a relative difference."""
    if isinstance(expected, float):
        good = math.isfinite(found) and abs(found - expected) <= relative * abs(expected)
    else:
        good = found == expected
    print("%-6s %s: %s, expected %s" % ("ok" if good else "WRONG", what, found, expected))
    if not good:
        FAILED.append(what)


def holds(what, good):
    same(what, bool(good), True)


class Problems:
    """Hears what a reader complains about."""

    def __init__(self, reader):
        self.heard = []
        reader.AddObserver("ErrorEvent", lambda *_: self.heard.append("error"))
        reader.AddObserver("WarningEvent", lambda *_: self.heard.append("warning"))


def read(reader, path):
    problems = Problems(reader)
    reader.SetFileName(path)
    reader.Update()
    same(os.path.basename(path) + " read without complaint", problems.heard, [])
    return reader.GetOutput()


def numbers(data, name):
    array = data.GetArray(name)
    if array is None:
        raise SystemExit("WRONG no array called " + name)
    return vtk_to_numpy(array)


def words(data, name):
    array = data.GetFieldData().GetAbstractArray(name)
    return [array.GetValue(i) for i in range(array.GetNumberOfValues())]


def fog(folder, result):
    """Image data: the voxels of the grid, with the fog that the ledger still has in the air at the end."""
    root = xml.etree.ElementTree.parse(os.path.join(folder, "fog.pvd")).getroot()
    sets = root.findall("./Collection/DataSet")
    holds("fog.pvd names files", len(sets) > 0)
    times = []
    for entry in sets:
        image = read(vtkXMLImageDataReader(), os.path.join(folder, entry.get("file")))
        time = image.GetFieldData().GetArray("TimeValue").GetValue(0)
        same("time in " + entry.get("file"), time, float(entry.get("timestep")))
        times.append(time)
    same("times ascend", times, sorted(times))
    cells = image.GetCellData()
    inside = numbers(cells, "vtkGhostType") == 0
    same("cells of the cavity", int(inside.sum()), result["grid"]["cells"])
    same("cells that a viewer shows", sum(image.IsCellVisible(c) for c in range(image.GetNumberOfCells())), result["grid"]["cells"])
    for axis in range(3):
        same("voxel size, m", image.GetSpacing()[axis], float(result["grid"]["voxelM"][axis]), 1e-12)
    volume = numbers(cells, "air_volume_m3").astype(float)
    same("volume, m3", float(volume.sum()), result["grid"]["volumeM3"], 1e-6)
    density = numbers(cells, "fog_kg_per_m3").astype(float)
    same("fog in the air at the end, kg", float((density * volume).sum()), result["ledger"]["airborneKg"], 1e-5)
    same("job time at the end, s", times[-1], float(result["history"][-1]["timeS"]), 1e-12)
    holds("no fog outside the cavity", (density[~inside] == 0).all() and density.min() >= 0)
    holds("air is finite", abs(numbers(cells, "air_velocity_m_per_s")).max() < 1000)
    same("components of a velocity", cells.GetArray("air_velocity_m_per_s").GetNumberOfComponents(), 3)
    holds("mixing is not negative", numbers(cells, "eddy_diffusivity_m2_per_s").min() >= 0)
    bays = numbers(cells, "bay")
    for index, bay in enumerate(result["bays"]):
        same("cells of " + bay["name"], int((bays == index).sum()), bay["cells"])
    same("names of bays", words(image, "bay_names"), [b["name"] for b in result["bays"]])


def surfels(folder, result):
    """Every surface element: areas, shares, mean film and mass as in the result."""
    points = read(vtkXMLPolyDataReader(), os.path.join(folder, "surfels.vtp"))
    same("surfels", points.GetNumberOfPoints(), result["grid"]["surfels"])
    same("vertices", points.GetNumberOfVerts(), result["grid"]["surfels"])
    data = points.GetPointData()
    area = numbers(data, "area_m2")
    film = numbers(data, "film_um")
    structure = numbers(data, "surface") == 0
    whole = float(area[structure].sum())
    same("area of the structure, m2", whole, result["coverage"]["areaM2"], 1e-9)
    haze, build, excess = (1e6 * result["thresholds"][k] for k in ("hazeM", "buildM", "excessM"))
    for name, least in (("reached", haze), ("protected", build)):
        share = float(area[structure & (film >= least * (1 - 1e-12))].sum()) / whole
        same("share " + name, share, result["coverage"][name], 1e-9)
    verdict = numbers(data, "verdict")
    same("share with excess", float(area[verdict == 3].sum()) / whole, float(result["coverage"]["excess"]), 1e-9)
    holds("verdicts follow the film", (verdict[structure] == ((film >= haze).astype(int) + (film >= build) + (film > excess))[structure]).mean() > 0.999)
    same("mean film, um", float((area * film)[structure].sum()) / whole, result["coverage"]["meanFilmUm"], 1e-9)
    jets, settled, ran = (numbers(data, n) for n in ("jets_share", "fog_share", "ran_in_share"))
    wet = film > 0
    holds("jets and fog make up the film", abs(jets + settled - 1)[wet].max() < 1e-9)
    holds("shares lie between 0 and 1", min(jets.min(), settled.min(), ran.min()) >= 0 and max(jets.max(), settled.max(), ran.max()) <= 1 + 1e-9)
    place = numbers(data, "bare_place")
    for region in result["unreached"]:
        same("area of bare place %d, m2" % region["id"], float(area[place == region["id"]].sum()), float(region["areaM2"]), 1e-9)
    normal = numbers(data, "normal").astype(float)
    holds("normals are units", abs((normal**2).sum(axis=1) - 1).max() < 1e-5)


def triangles(folder, result):
    """Film on the sheets: nothing thicker or thinner than the surfels have it, on the area that they have."""
    mesh = read(vtkXMLPolyDataReader(), os.path.join(folder, "film.vtp"))
    holds("film is drawn on triangles", mesh.GetNumberOfPolys() > 0 and mesh.GetNumberOfCells() == mesh.GetNumberOfPolys())
    points = vtk_to_numpy(mesh.GetPoints().GetData())
    corners = vtk_to_numpy(mesh.GetPolys().GetConnectivityArray()).reshape(-1, 3)
    a, b, c = (points[corners[:, k]] for k in range(3))
    cross = numpy.cross(b - a, c - a)
    area = 0.5 * numpy.sqrt((cross**2).sum(axis=1))
    kinds = numbers(mesh.GetCellData(), "verdict")
    same("area drawn of the structure, m2", float(area[kinds >= 0].sum()), result["coverage"]["areaM2"], 0.005)
    film = numbers(mesh.GetPointData(), "film_um")
    whole = film_range(folder)
    holds("film on vertices lies within that of surfels", film.min() >= whole[0] - 1e-6 and film.max() <= whole[1] * (1 + 1e-6))
    on_corner = film[corners].mean(axis=1)
    good = kinds >= 0
    same("mean film drawn, um", float((on_corner * area)[good].sum() / area[good].sum()), result["coverage"]["meanFilmUm"], 0.03)
    into_air = numbers(mesh.GetPointData(), "normal")[corners].mean(axis=1)
    holds("triangles turn towards their air", ((cross * into_air).sum(axis=1)[area > 1e-12] > 0).mean() > 0.99)
    return mesh.GetNumberOfPolys(), mesh.GetNumberOfPoints(), points, film


def film_range(folder):
    with open(os.path.join(folder, "surfels.csv"), newline="", encoding="utf-8") as table:
        film = [float(row["film_um"]) for row in csv.DictReader(table)]
    return min(film), max(film)


def seams(folder, result):
    lines = read(vtkXMLPolyDataReader(), os.path.join(folder, "seams.vtp"))
    expected = result["coverage"]["seams"]
    length = numbers(lines.GetCellData(), "length_m")
    same("length of seams, m", float(length.sum()), expected["lineM"], 1e-6)
    drawn = 0.0
    for i in range(lines.GetNumberOfCells()):
        points = lines.GetCell(i).GetPoints()
        drawn += sum(math.dist(points.GetPoint(k), points.GetPoint(k + 1)) for k in range(points.GetNumberOfPoints() - 1))
    same("length of the lines drawn, m", drawn, expected["lineM"], 1e-6)
    reached = numbers(lines.GetCellData(), "reached_share")
    sides = numbers(lines.GetCellData(), "sides")
    same("reached share of seams", float((reached * length * sides).sum() / (length * sides).sum()), expected["reached"], 1e-6)
    same("a name for each seam", len(words(lines, "seam_names")), lines.GetNumberOfCells())


def wand(folder, result):
    places = read(vtkXMLPolyDataReader(), os.path.join(folder, "stations.vtp"))
    duration = numbers(places.GetPointData(), "duration_s")
    same("time with the trigger held, s", float(duration.sum()), float(result["job"]["triggerS"]), 1e-9)
    depth = numbers(places.GetPointData(), "depth_m")
    deepest = max(float(i["maxDepthM"]) for i in result["insertions"])
    holds("no tip is deeper than its wand goes", depth.max() <= deepest * (1 + 1e-9))
    lines = read(vtkXMLPolyDataReader(), os.path.join(folder, "wand.vtp"))
    holds("lines of wands", lines.GetNumberOfLines() > 0)
    holds("wands have a diameter", numbers(lines.GetCellData(), "diameter_m").max() > 0)


def gltf(folder, mesh):
    """The same triangles through VTK's glTF loader: y up, so (x, y, z) has become (x, z, -y)."""
    polys, count, points, film = mesh
    reader = vtkGLTFReader()
    reader.ApplyDeformationsToGeometryOn()
    blocks = read(reader, os.path.join(folder, "film.glb"))
    walk = blocks.NewIterator()
    walk.InitTraversal()
    found, vertices, lines, reds, low, high, bounds = 0, 0, 0, set(), math.inf, -math.inf, [math.inf, -math.inf] * 3
    while not walk.IsDoneWithTraversal():
        part = walk.GetCurrentDataObject()
        walk.GoToNextItem()
        if part.GetNumberOfPolys() == 0:
            lines += part.GetNumberOfLines()
            continue
        found += part.GetNumberOfPolys()
        vertices += part.GetNumberOfPoints()
        own = part.GetBounds()
        for axis in range(3):
            bounds[2 * axis] = min(bounds[2 * axis], own[2 * axis])
            bounds[2 * axis + 1] = max(bounds[2 * axis + 1], own[2 * axis + 1])
        for i in range(part.GetPointData().GetNumberOfArrays()):
            array = part.GetPointData().GetArray(i)
            if array.GetName() == "COLOR_0":
                reds.update(vtk_to_numpy(array)[:, 0].tolist())
            if array.GetName() == "_FILM_UM":
                low, high = min(low, array.GetRange()[0]), max(high, array.GetRange()[1])
    same("triangles in glTF", found, polys)
    same("vertices in glTF", vertices, count)
    holds("a wand in glTF", lines > 0)
    holds("film has many colours", len(reds) > 20)
    same("thinnest film in glTF, um", low, float(film.min()), 1e-6)
    same("thickest film in glTF, um", high, float(film.max()), 1e-6)
    for axis, (column, sign) in enumerate(((0, 1), (2, 1), (1, -1))):
        ends = sorted(sign * float(f(points[:, column])) for f in (lambda p: p.min(), lambda p: p.max()))
        holds("extent of glTF along axis %d" % axis, abs(bounds[2 * axis] - ends[0]) < 1e-5 and abs(bounds[2 * axis + 1] - ends[1]) < 1e-5)


def tables(folder, result):
    def rows(name):
        with open(os.path.join(folder, name), newline="", encoding="utf-8") as table:
            return list(csv.DictReader(table))

    ledger = {row["where"]: float(row["mass_kg"]) for row in rows("ledger.csv")}
    for where in ("sprayed", "film", "airborne", "overspray", "dripped", "masked"):
        same("ledger, " + where, ledger[where], float(result["ledger"][where + "Kg"]))
    same("bare places in the table", [r["where"] for r in rows("bare-places.csv")], [u["where"] for u in result["unreached"]])
    same("seams in the table", len(rows("seams.csv")), len(result["coverage"]["seams"]["bySeam"]))
    same("surfels in the table", len(rows("surfels.csv")), result["grid"]["surfels"])
    same("points in time", len(rows("history.csv")), len(result["history"]))
    total = rows("coverage.csv")[0]
    same("reached share in the table", float(total["reached_share"]), float(result["coverage"]["reached"]))


def main(folder):
    with open(os.path.join(folder, "result.json"), encoding="utf-8") as text:
        result = json.load(text)
    fog(folder, result)
    surfels(folder, result)
    mesh = triangles(folder, result)
    seams(folder, result)
    wand(folder, result)
    gltf(folder, mesh)
    tables(folder, result)
    print("%d checks failed" % len(FAILED) if FAILED else "all checks hold")
    return 1 if FAILED else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
