using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace Setout.Testing.Architecture;

/// <summary>One type of an assembly and another of the same assembly that it names anywhere, method bodies included.</summary>
public sealed record TypeReference(string FromNamespace, string From, string ToNamespace, string To);

/// <summary>
/// Reads from the compiled assembly which of its own types each type names: base types, interfaces, attributes, constraints, signatures,
/// and every token in the code of its methods. Constants of enums and literals leave no trace in compiled code and cannot be seen.
/// </summary>
public static class TypeReferences
{
    private static readonly Dictionary<short, OpCode> s_codes = typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => code.Value);

    public static IReadOnlyList<TypeReference> Read(string assemblyPath)
    {
        using var file = new PEReader(File.OpenRead(assemblyPath));
        MetadataReader reader = file.GetMetadataReader();
        var found = new HashSet<TypeReference>();
        foreach (TypeDefinitionHandle handle in reader.TypeDefinitions)
        {
            var seen = new HashSet<TypeDefinitionHandle>();
            new Scan(file, reader, seen).Type(handle);
            (string fromNamespace, string from) = NameOf(reader, handle);
            foreach (TypeDefinitionHandle other in seen)
            {
                (string toNamespace, string to) = NameOf(reader, other);
                if (from != to || fromNamespace != toNamespace) found.Add(new(fromNamespace, from, toNamespace, to));
            }
        }
        return [.. found.OrderBy(r => r.From, StringComparer.Ordinal).ThenBy(r => r.To, StringComparer.Ordinal)];
    }

    /// <summary>Namespace and name of the outermost type: nested and generated types count as their holder.</summary>
    private static (string Namespace, string Name) NameOf(MetadataReader reader, TypeDefinitionHandle handle)
    {
        TypeDefinition type = reader.GetTypeDefinition(handle);
        while (!type.GetDeclaringType().IsNil) type = reader.GetTypeDefinition(type.GetDeclaringType());
        return (reader.GetString(type.Namespace), reader.GetString(type.Name));
    }

    private sealed class Scan(PEReader file, MetadataReader reader, HashSet<TypeDefinitionHandle> seen) : ISignatureTypeProvider<object?, object?>
    {
        public void Type(TypeDefinitionHandle handle)
        {
            TypeDefinition type = reader.GetTypeDefinition(handle);
            Entity(type.BaseType);
            foreach (InterfaceImplementationHandle item in type.GetInterfaceImplementations()) Entity(reader.GetInterfaceImplementation(item).Interface);
            Attributes(type.GetCustomAttributes());
            Constraints(type.GetGenericParameters());
            foreach (FieldDefinitionHandle item in type.GetFields())
            {
                FieldDefinition field = reader.GetFieldDefinition(item);
                field.DecodeSignature(this, null);
                Attributes(field.GetCustomAttributes());
            }
            foreach (PropertyDefinitionHandle item in type.GetProperties()) Attributes(reader.GetPropertyDefinition(item).GetCustomAttributes());
            foreach (EventDefinitionHandle item in type.GetEvents()) Entity(reader.GetEventDefinition(item).Type);
            foreach (MethodDefinitionHandle item in type.GetMethods()) Method(reader.GetMethodDefinition(item));
        }

        private void Method(MethodDefinition method)
        {
            method.DecodeSignature(this, null);
            Attributes(method.GetCustomAttributes());
            Constraints(method.GetGenericParameters());
            foreach (ParameterHandle item in method.GetParameters()) Attributes(reader.GetParameter(item).GetCustomAttributes());
            if (method.RelativeVirtualAddress == 0) return;
            MethodBodyBlock body = file.GetMethodBody(method.RelativeVirtualAddress);
            if (!body.LocalSignature.IsNil) reader.GetStandaloneSignature(body.LocalSignature).DecodeLocalSignature(this, null);
            foreach (ExceptionRegion region in body.ExceptionRegions) Entity(region.CatchType);
            Code(body.GetILReader());
        }

        private void Code(BlobReader code)
        {
            while (code.RemainingBytes > 0)
            {
                short value = code.ReadByte();
                if (value == 0xFE) value = unchecked((short)(0xFE00 | code.ReadByte()));
                switch (s_codes[value].OperandType)
                {
                    case OperandType.InlineNone: break;
                    case OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar: code.ReadByte(); break;
                    case OperandType.InlineVar: code.ReadInt16(); break;
                    case OperandType.InlineI8 or OperandType.InlineR: code.ReadInt64(); break;
                    case OperandType.InlineSwitch: int targets = code.ReadInt32(); code.Offset += 4 * targets; break;
                    case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType:
                        Entity((EntityHandle)MetadataTokens.Handle(code.ReadInt32()));
                        break;
                    case OperandType.InlineSig: Entity((EntityHandle)MetadataTokens.Handle(code.ReadInt32())); break;
                    default: code.ReadInt32(); break;
                }
            }
        }

        private void Entity(EntityHandle handle)
        {
            if (handle.IsNil) return;
            switch (handle.Kind)
            {
                case HandleKind.TypeDefinition:
                    seen.Add((TypeDefinitionHandle)handle);
                    break;
                case HandleKind.TypeSpecification:
                    reader.GetTypeSpecification((TypeSpecificationHandle)handle).DecodeSignature(this, null);
                    break;
                case HandleKind.FieldDefinition:
                    FieldDefinition field = reader.GetFieldDefinition((FieldDefinitionHandle)handle);
                    seen.Add(field.GetDeclaringType());
                    field.DecodeSignature(this, null);
                    break;
                case HandleKind.MethodDefinition:
                    MethodDefinition method = reader.GetMethodDefinition((MethodDefinitionHandle)handle);
                    seen.Add(method.GetDeclaringType());
                    method.DecodeSignature(this, null);
                    break;
                case HandleKind.MemberReference:
                    MemberReference member = reader.GetMemberReference((MemberReferenceHandle)handle);
                    Entity(member.Parent);
                    if (member.GetKind() == MemberReferenceKind.Method) member.DecodeMethodSignature(this, null);
                    else member.DecodeFieldSignature(this, null);
                    break;
                case HandleKind.MethodSpecification:
                    MethodSpecification made = reader.GetMethodSpecification((MethodSpecificationHandle)handle);
                    Entity(made.Method);
                    made.DecodeSignature(this, null);
                    break;
                case HandleKind.StandaloneSignature:
                    reader.GetStandaloneSignature((StandaloneSignatureHandle)handle).DecodeMethodSignature(this, null);
                    break;
            }
        }

        private void Attributes(CustomAttributeHandleCollection attributes)
        {
            foreach (CustomAttributeHandle item in attributes) Entity(reader.GetCustomAttribute(item).Constructor);
        }

        private void Constraints(GenericParameterHandleCollection parameters)
        {
            foreach (GenericParameterHandle item in parameters)
                foreach (GenericParameterConstraintHandle constraint in reader.GetGenericParameter(item).GetConstraints())
                    Entity(reader.GetGenericParameterConstraint(constraint).Type);
        }

        // Signatures: only the types of this assembly matter, whatever they are wrapped in.
        public object? GetTypeFromDefinition(MetadataReader r, TypeDefinitionHandle handle, byte kind) { seen.Add(handle); return null; }

        public object? GetTypeFromSpecification(MetadataReader r, object? context, TypeSpecificationHandle handle, byte kind) { Entity(handle); return null; }

        public object? GetTypeFromReference(MetadataReader r, TypeReferenceHandle handle, byte kind) => null;

        public object? GetPrimitiveType(PrimitiveTypeCode code) => null;

        public object? GetSZArrayType(object? element) => null;

        public object? GetArrayType(object? element, ArrayShape shape) => null;

        public object? GetByReferenceType(object? element) => null;

        public object? GetPointerType(object? element) => null;

        public object? GetPinnedType(object? element) => null;

        public object? GetGenericInstantiation(object? generic, ImmutableArray<object?> arguments) => null;

        public object? GetGenericMethodParameter(object? context, int index) => null;

        public object? GetGenericTypeParameter(object? context, int index) => null;

        public object? GetModifiedType(object? modifier, object? unmodified, bool isRequired) => null;

        public object? GetFunctionPointerType(MethodSignature<object?> signature) => null;
    }
}
