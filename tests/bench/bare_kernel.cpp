// What the kernel's own documentation would lead to: prisms of faces, one cut with all tools, the
// kernel's checks, a common of every two solids whose boxes meet, and STEP written and read. It
// knows nothing of bowfront and is the yardstick for the instructions that `make` spends.

#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRep_Builder.hxx>
#include <Bnd_Box.hxx>
#include <GC_MakeArcOfCircle.hxx>
#include <GProp_GProps.hxx>
#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_PrinterOStream.hxx>
#include <STEPControl_Reader.hxx>
#include <STEPControl_Writer.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <cmath>
#include <fstream>
#include <gp_Ax3.hxx>
#include <gp_Pln.hxx>
#include <iostream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

constexpr double kProtrusion = 1;  // of cutting tools, mm
constexpr double kDepth = 1e-4;    // from which two solids overlap, mm

struct Corner {
    double x = 0;
    double y = 0;
    double bulge = 0;
};
using Outline = std::vector<Corner>;

struct Recess {
    double depth = 0;
    std::vector<Outline> outlines;
};

struct Bore {
    double x = 0;
    double y = 0;
    double diameter = 0;
    double depth = 0;
};

struct Part {
    std::string assembly;
    double height = 0;
    bool high = true;
    std::vector<Outline> outlines;
    std::vector<Recess> recesses;
    std::vector<Bore> bores;
    std::vector<gp_Trsf> places;
};

Outline read_outline(std::istream& line) {
    std::size_t count = 0;
    line >> count;
    Outline outline(count);
    for (Corner& corner : outline) {
        line >> corner.x >> corner.y >> corner.bulge;
    }
    return outline;
}

gp_Trsf read_place(std::istream& line) {
    double n[9];
    for (double& number : n) {
        line >> number;
    }
    gp_Trsf place;
    place.SetDisplacement(gp_Ax3(), gp_Ax3(gp_Pnt(n[0], n[1], n[2]), gp_Dir(n[6], n[7], n[8]),
                                           gp_Dir(n[3], n[4], n[5])));
    return place;
}

std::vector<Part> read_parts(std::istream& file) {
    std::vector<Part> parts;
    for (std::string text; std::getline(file, text);) {
        std::istringstream line(text);
        std::string keyword;
        line >> keyword;
        if (keyword == "part") {
            std::string face;
            line >> parts.emplace_back().assembly >> parts.back().height >> face;
            parts.back().high = face == "high";
        } else if (keyword == "outline") {
            parts.back().outlines.push_back(read_outline(line));
        } else if (keyword == "recess") {
            line >> parts.back().recesses.emplace_back().depth;
        } else if (keyword == "recess-outline") {
            parts.back().recesses.back().outlines.push_back(read_outline(line));
        } else if (keyword == "bore") {
            Bore& bore = parts.back().bores.emplace_back();
            line >> bore.x >> bore.y >> bore.diameter >> bore.depth;
        } else if (keyword == "place") {
            parts.back().places.push_back(read_place(line));
        }
        if (line.fail()) {
            throw std::runtime_error("not a list of bodies: " + text);
        }
    }
    return parts;
}

TopoDS_Edge edge(const Corner& from, const Corner& to, double z) {
    const gp_Pnt start(from.x, from.y, z);
    const gp_Pnt end(to.x, to.y, z);
    if (from.bulge == 0) {
        return BRepBuilderAPI_MakeEdge(start, end).Edge();
    }
    const double x = (to.x - from.x) / 2;
    const double y = (to.y - from.y) / 2;
    const gp_Pnt crown(from.x + x + y * from.bulge, from.y + y - x * from.bulge, z);
    return BRepBuilderAPI_MakeEdge(GC_MakeArcOfCircle(start, crown, end).Value()).Edge();
}

TopoDS_Wire wire(const Outline& outline, double z) {
    BRepBuilderAPI_MakeWire made;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        made.Add(edge(outline[i], outline[(i + 1) % outline.size()], z));
    }
    return made.Wire();
}

TopoDS_Shape prism(const std::vector<Outline>& outlines, double low, double height) {
    BRepBuilderAPI_MakeFace face(gp_Pln(gp_Pnt(0, 0, low), gp_Dir(0, 0, 1)),
                                 wire(outlines.front(), low));
    for (std::size_t i = 1; i < outlines.size(); ++i) {
        face.Add(wire(outlines[i], low));
    }
    return BRepPrimAPI_MakePrism(face.Face(), gp_Vec(0, 0, height)).Shape();
}

TopoDS_Shape make(const Part& part) {
    const TopoDS_Shape blank = prism(part.outlines, 0, part.height);
    TopTools_ListOfShape tools;
    const auto foot = [&](double depth) { return part.high ? part.height - depth : -kProtrusion; };
    for (const Recess& recess : part.recesses) {
        tools.Append(prism(recess.outlines, foot(recess.depth), recess.depth + kProtrusion));
    }
    for (const Bore& bore : part.bores) {
        const bool through = bore.depth == part.height;
        const double low = through ? -kProtrusion : foot(bore.depth);
        const double length = bore.depth + (through ? 2 : 1) * kProtrusion;
        tools.Append(BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(bore.x, bore.y, low), gp_Dir(0, 0, 1)),
                                              bore.diameter / 2, length)
                         .Shape());
    }
    if (tools.IsEmpty()) {
        return blank;
    }
    TopTools_ListOfShape blanks;
    blanks.Append(blank);
    BRepAlgoAPI_Cut cut;
    cut.SetArguments(blanks);
    cut.SetTools(tools);
    cut.SetToFillHistory(false);
    cut.Build();
    return TopExp_Explorer(cut.Shape(), TopAbs_SOLID).Current();
}

double volume(const TopoDS_Shape& shape) {
    GProp_GProps properties;
    BRepGProp::VolumeProperties(shape, properties);
    return properties.Mass();
}

bool boxes_meet(const Bnd_Box& a, const Bnd_Box& b) {
    const gp_Pnt a_low = a.CornerMin();
    const gp_Pnt a_high = a.CornerMax();
    const gp_Pnt b_low = b.CornerMin();
    const gp_Pnt b_high = b.CornerMax();
    for (int axis = 1; axis <= 3; ++axis) {
        if (std::min(a_high.Coord(axis), b_high.Coord(axis)) -
                std::max(a_low.Coord(axis), b_low.Coord(axis)) <=
            kDepth) {
            return false;
        }
    }
    return true;
}

bool overlap(const TopoDS_Shape& a, const TopoDS_Shape& b) {
    TopTools_ListOfShape one;
    one.Append(a);
    TopTools_ListOfShape other;
    other.Append(b);
    BRepAlgoAPI_Common common;
    common.SetArguments(one);
    common.SetTools(other);
    common.SetFuzzyValue(kDepth);
    common.SetNonDestructive(true);
    common.SetToFillHistory(false);
    common.Build();
    return volume(common.Shape()) > 0;
}

int count_overlaps(const std::vector<TopoDS_Shape>& solids) {
    std::vector<Bnd_Box> boxes(solids.size());
    for (std::size_t i = 0; i < solids.size(); ++i) {
        BRepBndLib::AddOptimal(solids[i], boxes[i], false, false);
    }
    int found = 0;
    for (std::size_t i = 0; i < solids.size(); ++i) {
        for (std::size_t k = i + 1; k < solids.size(); ++k) {
            found += boxes_meet(boxes[i], boxes[k]) && overlap(solids[i], solids[k]) ? 1 : 0;
        }
    }
    return found;
}

double written_and_read(const TopoDS_Shape& assembly, const std::string& path) {
    STEPControl_Writer writer;
    Interface_Static::SetIVal("write.surfacecurve.mode", 0);
    Interface_Static::SetIVal("write.step.assembly", 1);
    writer.Transfer(assembly, STEPControl_AsIs);
    writer.Write(path.c_str());
    STEPControl_Reader reader;
    if (reader.ReadFile(path.c_str()) != IFSelect_RetDone || reader.TransferRoots() < 1) {
        throw std::runtime_error(path + " could not be read back");
    }
    return volume(reader.OneShape());
}

void run(const std::vector<Part>& parts, const std::string& folder) {
    std::map<std::string, std::vector<TopoDS_Shape>> assemblies;
    for (const Part& part : parts) {
        const TopoDS_Shape solid = make(part);
        if (!BRepCheck_Analyzer(solid).IsValid() || !(volume(solid) > 0)) {
            throw std::runtime_error("a solid of " + part.assembly + " is not valid");
        }
        for (const gp_Trsf& place : part.places) {
            assemblies[part.assembly].push_back(solid.Moved(TopLoc_Location(place)));
        }
    }
    for (const auto& [name, solids] : assemblies) {
        BRep_Builder builder;
        TopoDS_Compound compound;
        builder.MakeCompound(compound);
        for (const TopoDS_Shape& solid : solids) {
            builder.Add(compound, solid);
        }
        std::cout << name << ": " << solids.size() << " solids, " << count_overlaps(solids)
                  << " overlaps, " << written_and_read(compound, folder + "/" + name + ".step")
                  << " mm3 read back\n";
    }
}

}  // namespace

int main(int argument_count, char** arguments) {
    if (argument_count != 3) {
        std::cerr << "usage: bare_kernel BODIES FOLDER\n";
        return 2;
    }
    Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_PrinterOStream));
    try {
        std::ifstream file(arguments[1]);
        run(read_parts(file), arguments[2]);
    } catch (const Standard_Failure& failure) {
        std::cerr << failure.GetMessageString() << '\n';
        return 4;
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 4;
    }
    return 0;
}
